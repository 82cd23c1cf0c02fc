/**
 * Quantile q (0 to 1) by linear interpolation between order statistics: position q (n - 1) of the
 * sorted values (type 7 of Hyndman and Fan, Am. Stat. 50, 1996). NaN when there are no values.
 */
export function quantile(values: ArrayLike<number>, q: number): number {
  return quantileOfSorted(new Float64Array(values).sort(), q)
}

/** The same of values that rise. */
export function quantileOfSorted(sorted: ArrayLike<number>, q: number): number {
  if (sorted.length === 0) return Number.NaN
  const position = Math.min(1, Math.max(0, q)) * (sorted.length - 1)
  const below = Math.floor(position)
  const low = sorted[below]!
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!
  return low + (position - below) * (high - low)
}

/** Middle value, or the mean of the two middle ones; NaN when there are no values. */
export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5)
}

/** Median absolute deviation from the median, unscaled (× 1.4826 estimates a normal sd). */
export function medianAbsoluteDeviation(values: ArrayLike<number>): number {
  const middle = median(values)
  return median(Float64Array.from(values, (value) => Math.abs(value - middle)))
}

export function mean(values: ArrayLike<number>): number {
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += values[i]!
  return sum / values.length
}

/** Sample standard deviation (n - 1); NaN for fewer than two values. */
export function standardDeviation(values: ArrayLike<number>): number {
  const centre = mean(values)
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += (values[i]! - centre) ** 2
  return values.length < 2 ? Number.NaN : Math.sqrt(sum / (values.length - 1))
}
