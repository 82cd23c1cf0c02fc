import { median } from '../../../shared/statistics/summary'

/**
 * How much something grew once it had settled: the median of the last quarter of its readings less
 * that of the second quarter. The first quarter is warming up (code compiled, caches filled).
 * @throws when there are too few readings to tell
 */
export function growthOf(readings: readonly number[]): number {
  const quarter = Math.floor(readings.length / 4)
  if (quarter < 2) throw new Error(`${readings.length} readings are too few: 8 are the least.`)
  return median(readings.slice(-quarter)) - median(readings.slice(quarter, 2 * quarter))
}
