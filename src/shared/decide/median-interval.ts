import { median } from '../statistics/summary'
import { normalHalfWidth } from '../statistics/wilson'

export interface MedianInterval {
  value: number
  low: number
  high: number
  n: number
}

/**
 * Median with the 95 % interval between order statistics: ranks n/2 ± z √n / 2, outwards (Conover,
 * Practical Nonparametric Statistics). Ends are those of the values where there are too few.
 */
export function medianInterval(values: readonly number[]): MedianInterval {
  const n = values.length
  if (n === 0) return { value: Number.NaN, low: Number.NaN, high: Number.NaN, n }
  const sorted = Float64Array.from(values).sort()
  const half = (normalHalfWidth(0.95) * Math.sqrt(n)) / 2
  const at = (rank: number) => sorted[Math.min(n - 1, Math.max(0, rank - 1))]!
  return {
    value: median(values),
    low: at(Math.floor(n / 2 - half)),
    high: at(Math.ceil(n / 2 + half) + 1),
    n,
  }
}
