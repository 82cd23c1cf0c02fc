import { normalHalfWidth } from './wilson'

/** Two recognisers, or two settings of one, that answered the same takes. */
export interface PairedLoss {
  /** Takes that only the first had right, and only the second. */
  onlyFirst: number
  onlySecond: number
  n: number
  /** Share of takes lost by going from the first to the second: (onlyFirst - onlySecond) / n. */
  value: number
  /** Tango's score interval. */
  low: number
  high: number
}

/**
 * Difference of two shares measured on the same takes, with the score interval of Tango (Statistics in
 * Medicine 17, 1998, 891-908): all differences that the score test, with the likelihood maximised under
 * each, does not contradict. Without any take that flipped it is still as wide as n deserves:
 * z² / (n + z²) to either side.
 * @throws RangeError when the counts are none: a bug in the caller.
 */
export function pairedLoss(
  onlyFirst: number,
  onlySecond: number,
  n: number,
  confidence = 0.95,
): PairedLoss {
  const counts = [onlyFirst, onlySecond, n]
  if (!counts.every((count) => Number.isInteger(count) && count >= 0) || onlyFirst + onlySecond > n)
    throw new RangeError(`${onlyFirst} and ${onlySecond} of ${n} are no counts of pairs`)
  const basis = { onlyFirst, onlySecond, n }
  if (n === 0) return { ...basis, value: Number.NaN, low: -1, high: 1 }
  const value = (onlyFirst - onlySecond) / n
  const z = normalHalfWidth(confidence)
  const score = (difference: number) => tangoScore(onlyFirst, onlySecond, n, difference)
  return {
    ...basis,
    value,
    low: onlySecond === n ? -1 : bisect((x) => score(x) - z, -1, value),
    high: onlyFirst === n ? 1 : bisect((x) => score(x) + z, value, 1),
  }
}

/** Standardised distance of the observed difference from one that is supposed; falls as it grows. */
export function tangoScore(b: number, c: number, n: number, difference: number): number {
  const linear = -b - c + (2 * n - b + c) * difference
  const rest = -c * difference * (1 - difference)
  // The larger root of 2 n q² + linear q + rest: likeliest share of takes that only the second has.
  const q = (Math.sqrt(Math.max(0, linear * linear - 8 * n * rest)) - linear) / (4 * n)
  const variance = n * (2 * q + difference * (1 - difference))
  const distance = b - c - n * difference
  if (distance === 0) return 0
  return distance / Math.sqrt(Math.max(variance, Number.MIN_VALUE))
}

/** Where a falling function crosses nought. */
function bisect(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to]
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2
    if (f(middle) > 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}
