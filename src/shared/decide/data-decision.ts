import type { Rate } from '../model/evaluation'

/** What a gain is expected to be, as a share of takes: an estimate, with what testers disagree on. */
export interface ExpectedGain {
  value: number
  /** 95 % by Student's t on the standard error with testers left out in turn (jackknife). */
  low: number
  high: number
}

export interface CurvePoint {
  count: number
  /** Takes right, mean over the draws; the interval is that over testers. */
  rate: Rate
  draws: number
  /** Least and greatest share of a draw. */
  least: number
  most: number
}

export interface LearningCurve {
  /** Points by rising count; the last one has everything. */
  points: CurvePoint[]
  /** From the last count to `next`; null where the curve is too short to be drawn on. */
  next: number
  gain: ExpectedGain | null
}

/** One gesture's share in what goes wrong with everything recorded. */
export interface GestureErrors {
  gesture: number
  wrong: number
  rate: Rate
}

export const NEXT_KINDS = ['tester', 'takes', 'background', 'nothing'] as const
export type NextKind = (typeof NEXT_KINDS)[number]

/** How much data is enough, and what to record next. */
export interface DataDecision {
  holdout: 'tester' | 'take'
  gestures: { id: string; name: string }[]
  testers: string[]
  /** Takes of each gesture by each tester that training has; null: one take of each. */
  takes: LearningCurve | null
  /** Testers that training has; null where fewer than three testers have takes. */
  byTesters: LearningCurve | null
  /** Most often wrong first. */
  errors: GestureErrors[]
  background: { hours: number; activations: number; low: number; high: number } | null
  /** Most useful first. */
  next: NextKind[]
}
