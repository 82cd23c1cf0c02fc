import type { CoreEvent } from '../core/core'
import type { MatcherKind, RecogniserModel } from './recogniser-model'

/** A share with its count and interval. */
export interface Rate {
  hits: number
  n: number
  /** hits / n; NaN when n is 0. */
  value: number
  /** Wilson 95 % interval. */
  low: number
  high: number
}

export type Holdout = 'tester' | 'take'

/** What the recogniser made of one held-out take. */
export interface TakeOutcome {
  takeId: string
  testerCode: string
  /** Index of the performed gesture in `Evaluation.gestures`. */
  truth: number
  /** Index of the answer, or null for reject (also when no movement was cut). */
  answer: number | null
  /** Index of the nearest gesture, answered or not; null when nothing was compared. */
  nearest: number | null
  /** Threshold factor from which on `nearest` is the answer; null: at none. */
  acceptedFrom: number | null
  /** 'ok' one segment, 'missed' none, 'split' more than one, 'long', 'short' not compared. */
  cut: 'ok' | 'missed' | 'split' | 'long' | 'short'
  /** Event that decided (the longest segment), null when missed. */
  event: CoreEvent | null
  /** Held-out group this take was in. */
  fold: number
}

export interface GestureScore {
  gestureId: string
  name: string
  recall: Rate
  precision: Rate
}

export interface Evaluation {
  holdout: Holdout
  /** Of the thresholds that answered, as in the training settings. */
  thresholdFactor: number
  gestures: { id: string; name: string }[]
  testers: string[]
  /** Rows performed, columns answered, last column reject; gestures.length × (length + 1). */
  confusion: number[][]
  accuracy: Rate
  rejected: Rate
  scores: GestureScore[]
  outcomes: TakeOutcome[]
  /** Takes left out and why, such as a tester with takes of one gesture only. */
  skipped: { takeId: string; reason: string }[]
  background: BackgroundScore | null
  folds: EvaluationFold[]
}

/** One round: what was held out, and what its model was. */
export interface EvaluationFold {
  heldOut: string
  trainTakes: number
  testTakes: number
  matcher: MatcherKind
  /** As in `TrainedModel`. */
  distancePerLog: number | null
}

/** Activations in recordings that hold no gesture. Never trained on in the fold that counts it. */
export interface BackgroundScore {
  hours: number
  activations: number
  /** Activations an hour with the exact Poisson (Garwood) 95 % interval. */
  perHour: number
  low: number
  high: number
  segments: number
  /** Threshold factor from which on each segment is answered, ascending; those that never are left out. */
  acceptedFrom: number[]
}

export interface TrainedModel {
  model: RecogniserModel
  /** Model bytes as the core reads them. */
  bytes: Uint8Array
  /** SHA-256 of the bytes, hex. */
  hash: string
  /** Estimated bytes of flash for tables, and of RAM for state and memory. */
  tableBytes: number
  ramBytes: number
  /** Takes used and takes in which no single movement was found. */
  usedTakeIds: string[]
  uncutTakeIds: string[]
  /** Sentences on what training noticed, such as too few takes. */
  notes: string[]
  /**
   * Distances times this change like ln(template distance), so that thresholds follow the logarithm
   * of the threshold factor; null where distances are those to templates and it multiplies.
   */
  distancePerLog: number | null
  /** For people: how segments are compared, where there was a choice; empty otherwise. */
  choice: string
}
