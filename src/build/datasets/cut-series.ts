import { AXES } from '../../shared/model/sample'

/** A movement that a data set gives already cut, in counts as the core takes them. */
export interface CutSeries {
  label: string
  /** Who moved; '' where the set does not say. */
  tester: string
  /** n × 6 counts, accelerometer then gyroscope; absent axes are 0. */
  counts: Int16Array
}

/** Rounds half away from zero, as C's lround does, and keeps within int16. */
export function toCount(value: number): number {
  const rounded = Math.sign(value) * Math.floor(Math.abs(value) + 0.5)
  return Math.max(-32768, Math.min(32767, rounded))
}

/**
 * Dimensions, each of n values, as n × 6 counts.
 * @param countsPerUnit for accelerometer and gyroscope
 */
export function dimensionsToCounts(
  dimensions: readonly ArrayLike<number>[],
  countsPerUnit: readonly [accel: number, gyro: number],
): Int16Array {
  const length = dimensions[0]?.length ?? 0
  const counts = new Int16Array(length * AXES)
  for (const [axis, values] of dimensions.slice(0, AXES).entries()) {
    const scale = axis < 3 ? countsPerUnit[0] : countsPerUnit[1]
    for (let i = 0; i < length; i++) counts[i * AXES + axis] = toCount((values[i] ?? 0) * scale)
  }
  return counts
}
