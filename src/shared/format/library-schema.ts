import * as v from 'valibot'
import { LIBRARY_FORMAT_VERSION, MATCHER_WISHES } from '../model/library'
import {
  contentIdSchema,
  historySchema,
  plansSchema,
  sessionsSchema,
  withdrawalsSchema,
} from './collect-schema'
import { answerSchema, lightSchema } from './light-schema'
import {
  device,
  finite,
  hand,
  id,
  instant,
  lengthMs,
  name,
  sensorRange,
  span,
  text,
  whole,
} from './schema-parts'

/**
 * Shape of `library.json`, the only description of it: types, reading and the published JSON
 * Schema come from here. Keys that are not named here are refused.
 */
const recordingFacts = {
  id,
  libraryId: id,
  testerCode: text(40),
  hand,
  source: v.picklist(['phone', 'simulated', 'generated', 'imported', 'board']),
  recordedAt: instant,
  device,
  sampleCount: whole(0, 10_000_000),
  durationMs: lengthMs,
  gaps: v.pipe(v.array(span), v.maxLength(100_000)),
  note: text(4_000),
  deletedAt: v.nullable(instant),
  sessionId: v.exactOptional(id),
  contentId: v.exactOptional(contentIdSchema),
  history: v.exactOptional(historySchema),
  /** Path of the samples inside the ZIP. */
  file: v.pipe(v.string(), v.minLength(5), v.maxLength(400), v.regex(/\.csv$/)),
}

const take = v.strictObject({
  kind: v.literal('take'),
  gestureId: id,
  trim: v.nullable(span),
  ...recordingFacts,
})

const background = v.strictObject({ kind: v.literal('background'), ...recordingFacts })

/** A rotation's entries are within ±1; typed by hand with three decimals they may pass it a little. */
const cell = finite(-1.01, 1.01)

/** Of one board, calibrated at the bench; see TargetCalibration. */
const calibration = v.strictObject({
  zero: v.pipe(v.array(whole(-32_768, 32_767)), v.length(6)),
  /** 16384 is 1. */
  correctionQ14: v.pipe(v.array(whole(-65_536, 65_536)), v.length(9)),
})

export const targetSchema = v.strictObject({
  name: text(100),
  preset: text(100),
  accel: sensorRange,
  gyro: sensorRange,
  rateHz: finite(12.5, 400),
  mounting: v.strictTuple([cell, cell, cell, cell, cell, cell, cell, cell, cell]),
  longAxis: v.picklist(['x', 'y', 'z']),
  clockHz: whole(0, 10_000_000_000),
  flashBytes: whole(0, 4_294_967_295),
  ramBytes: whole(0, 4_294_967_295),
  modelBudgetBytes: whole(0, 4_294_967_295),
  calibration: v.exactOptional(calibration),
})

const training = v.strictObject({
  templatesPerGesture: whole(1, 16),
  length: whole(8, 128),
  bandShare: finite(0, 1),
  rollAlign: v.boolean(),
  segmentation: v.picklist(['motion', 'button']),
  thresholdFactor: finite(0.5, 2),
  matcher: v.exactOptional(v.picklist(MATCHER_WISHES)),
})

const gesture = v.strictObject({
  id,
  name,
  note: text(4_000),
  answer: v.exactOptional(answerSchema),
})

const library = v.strictObject({
  id,
  name,
  createdAt: instant,
  generated: v.boolean(),
  /** As many as a model can hold: MVW_MAX_GESTURES. */
  gestures: v.pipe(v.array(gesture), v.maxLength(64)),
  target: targetSchema,
  training,
  light: v.exactOptional(lightSchema),
  plans: v.exactOptional(plansSchema),
  sessions: v.exactOptional(sessionsSchema),
  withdrawals: v.exactOptional(withdrawalsSchema),
})

/** Facts of one recording, with the path of its samples. */
export const recordingSchema = v.variant('kind', [take, background])

export const libraryDocumentSchema = v.strictObject({
  format: v.literal('movewright-library'),
  /** Older versions lack some members that may be missing; all else is the same. */
  formatVersion: v.picklist([1, 2, LIBRARY_FORMAT_VERSION]),
  library,
  recordings: v.pipe(v.array(recordingSchema), v.maxLength(20_000)),
})

/** What `library.json` holds. */
export type LibraryDocument = v.InferOutput<typeof libraryDocumentSchema>
