/** Values in one sample: accelerometer x y z, gyroscope x y z. */
export const AXES = 6

/** Axis names in sample order, W3C device axes: x right, y to the top, z out of the screen. */
export const AXIS_NAMES = ['ax', 'ay', 'az', 'gx', 'gy', 'gz'] as const

/** Standard gravity, m/s² (3rd CGPM 1901; exact). */
export const STANDARD_GRAVITY_MPS2 = 9.80665

/**
 * A stretch of samples as recorded: SI accelerations and angular rates in degrees per second (the
 * degree is accepted for use with the SI, and it is what phones and data sheets give).
 */
export interface SampleBlock {
  /** Time of each sample, ms from the start of the recording; never decreasing. */
  tMs: Float64Array
  /** n × 6 row-major: accelerometer m/s² (gravity included), gyroscope deg/s; raw, never altered. */
  values: Float32Array
}

/** What a target sensor would have read: n × 6 row-major counts at an even rate. */
export interface CountBlock {
  counts: Int16Array
  rateHz: number
  /** Values that hit the end of the range, over all axes. */
  clippedCount: number
}

export function sampleCount(block: SampleBlock): number {
  return block.tMs.length
}
