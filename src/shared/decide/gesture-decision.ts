import type { Rate } from '../model/evaluation'
import type { MedianInterval } from './median-interval'
import type { SubsetChoice } from './subset'

/**
 * Ways to look at takes:
 * - 'recogniser': as training on this library compares them;
 * - 'shape': course of rotation alone, without size, speed and attitude;
 * - 'accelerometer': as a board without a gyroscope would compare them;
 * - 'unaligned': without alignment by gravity.
 */
export const VIEWS = ['recogniser', 'shape', 'accelerometer', 'unaligned'] as const
export type View = (typeof VIEWS)[number]

export const ADVICE_KINDS = ['speed', 'size', 'roll', 'gyro', 'part', 'alike'] as const
export type AdviceKind = (typeof ADVICE_KINDS)[number]

/** Median and quartiles. */
export interface Spread {
  low: number
  middle: number
  high: number
  n: number
}

/** Takes of `whole` in which a piece was cut out and answered as `part`. */
export interface PieceCount {
  whole: number
  part: number
  rate: Rate
}

/** How two gestures are told apart. Indices are those of `GestureDecision.gestures`, first < second. */
export interface PairReport {
  first: number
  second: number
  /** Share of held-out takes of the two nearer to their own, by view; null where not looked at. */
  told: Record<View, Rate | null>
  /** ln(distance to the other / distance to the own) as compared: median with its 95 % interval. */
  margin: MedianInterval
  /** The same margin by the course of rotation alone. */
  courseMargin: MedianInterval
  /** Rate of turning of the one that turns less, median rms an axis, deg/s: without any, no course. */
  turningDps: number
  /** The same share by one number alone: duration, size, and rotation on the way. */
  byDuration: Rate
  bySize: Rate
  byTurn: Rate
  /** Pieces of the one answered as the other, when that happens. */
  pieces: PieceCount | null
  advice: AdviceKind | null
}

/** A gesture's normalised segments: mean and standard deviation, points × axes, as compared. */
export interface GestureProfile {
  gesture: number
  takes: number
  mean: number[]
  deviation: number[]
  durationMs: Spread
}

/** Which gestures are told apart, and which to keep. */
export interface GestureDecision {
  holdout: 'tester' | 'take'
  gestures: { id: string; name: string }[]
  testers: string[]
  takes: number
  /** Takes in which no movement was cut out, which no comparison has. */
  uncut: number
  /** Held-out takes answered rightly by trained models, all gestures in. */
  accuracy: Rate
  pairs: PairReport[]
  profiles: GestureProfile[]
  /** Points and axes of a profile. */
  length: number
  channels: number
  /** Best set of each size, from 2. */
  subsets: KeptSet[]
}

export interface KeptSet extends SubsetChoice {
  /** Takes right when the set is chosen without the tester who then performs it. */
  unseen: Rate
}
