import {
  isHistory,
  isPlan,
  isPlans,
  isSessions,
  isWithdrawals,
} from '../shared/format/collect-schema'
import { isAnswer, isLightSettings } from '../shared/format/light-schema'
import {
  type Background,
  type DeviceFacts,
  type Gap,
  type Gesture,
  type Library,
  MATCHER_WISHES,
  type Recording,
  type Take,
  type TrainingSettings,
  type Trim,
} from '../shared/model/library'
import { AXES, type SampleBlock } from '../shared/model/sample'
import type { SensorRange, Target, TargetCalibration } from '../shared/model/target'
import * as check from './checks'
import type { StoredChunk, StoredLibrary } from './schema'

/*
 * What comes out of the database is not trusted: an earlier version, a half-cleaned profile or a
 * person with developer tools may have left anything there. What does not fit is left out by the
 * callers and counted; nothing is deleted.
 */

const isSpan = check.shape<Trim & Gap>({ startMs: check.isNumber, endMs: check.isNumber })

const isGesture = check.shape<Gesture>({
  id: check.isName,
  name: check.isText,
  note: check.isText,
  answer: check.orMissing(isAnswer),
})

const isRange = check.shape<SensorRange>({
  fullScale: check.isPositive,
  nanoPerLsb: check.isPositive,
})

const isCalibration = check.shape<TargetCalibration>({
  zero: check.listOf(check.isNumber, 6),
  correctionQ14: check.listOf(check.isNumber, 9),
})

const isTarget = check.shape<Target>({
  name: check.isText,
  preset: check.isText,
  accel: isRange,
  gyro: isRange,
  rateHz: check.isPositive,
  mounting: check.listOf(check.isNumber, 9),
  longAxis: check.oneOf('x', 'y', 'z'),
  clockHz: check.isPositive,
  flashBytes: check.isCount,
  ramBytes: check.isCount,
  modelBudgetBytes: check.isCount,
  calibration: check.orMissing(isCalibration),
})

const isTraining = check.shape<TrainingSettings>({
  templatesPerGesture: check.isCount,
  length: check.isCount,
  bandShare: check.isNotNegative,
  rollAlign: check.isFlag,
  segmentation: check.oneOf('motion', 'button'),
  thresholdFactor: check.isPositive,
  matcher: check.orMissing(check.oneOf(...MATCHER_WISHES)),
})

const isLibrary = check.shape<Library>({
  id: check.isName,
  name: check.isText,
  createdAt: check.isTime,
  generated: check.isFlag,
  gestures: check.listOf(isGesture),
  target: isTarget,
  training: isTraining,
  light: check.orMissing(isLightSettings),
  plans: check.orMissing(isPlans),
  sessions: check.orMissing(isSessions),
  withdrawals: check.orMissing(isWithdrawals),
})

const isStoredLibrary = check.shape<StoredLibrary>({
  id: check.isName,
  deletedAt: check.orNull(check.isTime),
  library: isLibrary,
})

const isDevice = check.shape<DeviceFacts>({
  label: check.isText,
  rateHz: check.isNotNegative,
  accelStepMps2: check.isNotNegative,
  gyroStepDps: check.isNotNegative,
  accelSign: check.oneOf(1, -1, 0),
  hasGyro: check.isFlag,
})

const backgroundFields = {
  id: check.isName,
  libraryId: check.isName,
  testerCode: check.isText,
  hand: check.oneOf('left', 'right', 'unknown'),
  source: check.oneOf('phone', 'simulated', 'generated', 'imported', 'board'),
  recordedAt: check.isTime,
  device: isDevice,
  sampleCount: check.isCount,
  durationMs: check.isNotNegative,
  gaps: check.listOf(isSpan),
  note: check.isText,
  deletedAt: check.orNull(check.isTime),
  sessionId: check.orMissing(check.isName),
  contentId: check.orMissing(check.isName),
  history: check.orMissing(isHistory),
}

const isBackground = check.shape<Background>({
  ...backgroundFields,
  kind: check.oneOf('background'),
})

const isTake = check.shape<Take>({
  ...backgroundFields,
  kind: check.oneOf('take'),
  gestureId: check.isName,
  trim: check.orNull(isSpan),
})

/** The stored library, or null when it is damaged. */
export function restoreLibrary(value: unknown): StoredLibrary | null {
  const stored = withReadablePlans(value)
  return isStoredLibrary(stored) && stored.id === stored.library.id ? stored : null
}

/** Leaves out plans that cannot be read: one is soon written again, the takes beside it are not. */
function withReadablePlans(value: unknown): unknown {
  const stored = value as { library?: { plans?: unknown } } | null | undefined
  const plans = stored?.library?.plans
  if (plans === undefined || isPlans(plans)) return value
  const readable = Array.isArray(plans) ? plans.filter(isPlan) : []
  return { ...stored, library: { ...stored?.library, plans: readable } }
}

/** The facts of a recording, or null when they are damaged. */
export function restoreRecording(value: unknown): Recording | null {
  return isTake(value) || isBackground(value) ? value : null
}

/** The chunk, or null when its arrays do not belong together, go back in time or hold no number. */
export function restoreChunk(value: unknown): StoredChunk | null {
  if (typeof value !== 'object' || value === null) return null
  const { tMs, values } = value as Partial<SampleBlock>
  if (!(tMs instanceof Float64Array) || !(values instanceof Float32Array)) return null
  if (values.length !== tMs.length * AXES) return null
  if (!tMs.every((t, i) => Number.isFinite(t) && (i === 0 || t >= tMs[i - 1]!))) return null
  return values.every(Number.isFinite) ? (value as StoredChunk) : null
}
