import type { Rate } from '../model/evaluation'
import type { PairedLoss } from '../statistics/paired'

/** What a part can be had with. Ranges and sensitivities are those of the target's family. */
export interface SensorSetting {
  rateHz: number
  /** Accelerometer, g. */
  rangeG: number
  /** Bits of a value over the whole range; 16 is what the target has. */
  bits: number
  /** White noise that is added to the recordings, µg/√Hz and mdeg/s/√Hz; 0: as recorded. */
  accelNoise: number
  gyroNoise: number
  gyro: boolean
}

export const SWEEP_AXES = ['gyro', 'rate', 'bits', 'noise', 'range'] as const
export type SweepAxis = (typeof SWEEP_AXES)[number]

/**
 * 'enough': the loss is below the tolerance with the whole of its interval; 'worse': some loss is
 * certain; 'open': too few takes to say either.
 */
export type SweepVerdict = 'enough' | 'worse' | 'open'

export interface SettingResult {
  setting: SensorSetting
  /** What was changed alone; 'own': nothing, 'together': several. */
  axis: SweepAxis | 'own' | 'together'
  accuracy: Rate
  /** Against the target's own setting, on the same takes; with three testers or more over testers. */
  loss: PairedLoss
  /** Two-sided exact McNemar p. */
  mcnemar: number
  verdict: SweepVerdict
  /**
   * Takes after which this loss would be bounded below the tolerance, about, by further testers where
   * it is judged over testers; null where none would.
   */
  takesNeeded: number | null
  background: { activations: number; hours: number; low: number; high: number } | null
  /** Takes with a clipped acceleration. */
  clipped: Rate
  /** Of models trained in the rounds, the most. Code is measured, tables are counted. */
  flashBytes: number
  ramBytes: number
  /** Estimated: the longest decision on the target's kind of part. */
  decisionMs: number
}

/** What the recordings hold, and so what they cannot answer. */
export interface SensorLimits {
  /** Median rate of the takes' recordings, Hz. */
  recordedHz: number
  /** Highest frequency in them, Hz. */
  contentHz: number
  /** Rates of the family above that, which were not tried. */
  untriedHz: number[]
  /** Largest acceleration in a take, g. */
  largestG: number
  /** Range that the recording sensor itself seems to clip at, g; null where it shows none. */
  phoneClipG: number | null
  /** Noise density that the recordings' rounding alone amounts to, µg/√Hz; null where not known. */
  floorNoise: number | null
  /** Takes recorded without a gyroscope. */
  withoutGyro: number
}

export interface SensorDecision {
  holdout: 'tester' | 'take'
  /** Loss in share of takes that the designer accepts. */
  tolerance: number
  testers: string[]
  own: SettingResult
  /** Settings with one thing changed, in the order of SWEEP_AXES. */
  results: SettingResult[]
  /** Settings with several changed, in the order they were tried. */
  together: SettingResult[]
  /** Last 'enough' of the search, each way of which ends at its first that is not; else the own one. */
  cheapest: SettingResult
  limits: SensorLimits
}
