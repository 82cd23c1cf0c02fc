/**
 * What passes. Each limit comes from figures that data sheets of cheap six-axis parts print (MPU-6050
 * product specification rev 3.4, sections 6.1 and 6.2, is the widest of those looked at), with room for
 * what a bench adds. None is fitted to logs.
 */

/** Zero-g output: ±50 mg (x, y) and ±80 mg (z) printed; half as much again for soldering and heat. */
export const ACCEL_ZERO_LIMIT_G = 0.12
/** Zero-rate output: ±20 deg/s printed; half as much again for warmth. */
export const GYRO_ZERO_LIMIT_DPS = 30

/** 400 µg/√Hz printed; three times as much passes. */
export const ACCEL_NOISE_LIMIT_G = 3 * 400e-6
/** 0.005 deg/s/√Hz printed; four times as much passes, as older parts are noisier. */
export const GYRO_NOISE_LIMIT_DPS = 4 * 0.005

/** Noise of a first-order filter at half the rate takes in 1.57 times its corner. */
export function noiseBandwidthHz(rateHz: number): number {
  return (1.57 * rateHz) / 2
}

/** ±3 % sensitivity, 0.5 % non-linearity, 0.3 % of local gravity, 1 % of poses 8° off: 5 %, and room. */
export const ACCEL_SCALE_LIMIT = 1.07
/** From one pose the offset is in it too: 80 mg and the above, and room. Families differ by 2. */
export const ACCEL_SCALE_LIMIT_ONE_POSE = 1.2

/**
 * The geometric middle between right (1) and the nearest confusion of families (1.14688, power-of-two
 * against decimal sensitivities). ±3 % sensitivity and ±3 % of an unmeasured rate stay inside.
 */
export const GYRO_SCALE_LIMIT = Math.sqrt(1.14688)

/** A found factor belongs to a known confusion when it is this near to it. */
export const FAMILY_TOLERANCE = 1.07

/** Mixing rates by more would shift lengths of movements as much as the core refuses to bear. */
export const RATE_LIMIT = 0.05

/** Gaps up to this share of samples pass: a byte lost now and then on a cable. */
export const DROPPED_LIMIT = 0.002
/** Intervals above this many usual ones count as a gap. */
export const GAP_FACTOR = 1.6

/** Same six values twice in a row while moving; noise alone makes that rarer than once in 1e4. */
export const DOUBLED_LIMIT = 0.01
/** From here on it is not single samples but polling faster than the sensor measures. */
export const REPEATED_LIMIT = 0.2

/** A line must stand out this much over the noise around it: false in one log of a million. */
export const LINE_POWER_RATIO = 25
/** ... and be at least as large as the rest of the noise, or it does no harm. */
export const LINE_OVER_NOISE = 1
/** Below this drift and the hand rule, Hz. */
export const LINE_FROM_HZ = 2

/** At rest nothing reads above these, so an even top above them is the end of a range. */
export const CLIP_ABOVE_G = 1.5
export const CLIP_ABOVE_DPS = 60

/** Fewest rows that anything can be said from. */
export const FEWEST_ROWS = 20
/** A sensor axis that does not change over this many rows of a moved board is frozen. */
export const FROZEN_ROWS = 60
