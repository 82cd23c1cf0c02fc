import type { Rate } from '../model/evaluation'
import { chiSquareQuantile } from './gamma'

/**
 * Half of a two-sided interval in standard deviations of a normal distribution: 1.959964 for 0.95.
 * The square of a standard normal variable is chi-square with one degree of freedom.
 */
export function normalHalfWidth(confidence: number): number {
  return Math.sqrt(chiSquareQuantile(confidence, 1))
}

const HALF_WIDTH_95 = normalHalfWidth(0.95)

/**
 * Share of hits with its Wilson score interval, 95 % unless told otherwise. Formula: NIST/SEMATECH
 * e-Handbook of Statistical Methods, 7.2.4.1 (Wilson, J. Am. Stat. Assoc. 22, 1927), without
 * continuity correction. n = 0 gives value NaN and the interval 0 to 1.
 * @throws RangeError when hits and n are not counts with hits <= n: a bug in the caller.
 */
export function wilson(hits: number, n: number, confidence = 0.95): Rate {
  if (!Number.isInteger(hits) || !Number.isInteger(n) || hits < 0 || hits > n) {
    throw new RangeError(`${hits} of ${n} is not a share of counts`)
  }
  if (n === 0) return { hits, n, value: Number.NaN, low: 0, high: 1 }
  return { hits, n, ...wilsonOfShare(hits / n, n, confidence) }
}

/** The same for a share of a number of trials that need not be whole, such as an effective number. */
export function wilsonOfShare(
  share: number,
  n: number,
  confidence = 0.95,
): Pick<Rate, 'value' | 'low' | 'high'> {
  const z = confidence === 0.95 ? HALF_WIDTH_95 : normalHalfWidth(confidence)
  const z2n = (z * z) / n
  const centre = share + z2n / 2
  const half = z * Math.sqrt((share * (1 - share)) / n + z2n / (4 * n))
  return {
    value: share,
    low: share === 0 ? 0 : (centre - half) / (1 + z2n),
    high: share === 1 ? 1 : (centre + half) / (1 + z2n),
  }
}
