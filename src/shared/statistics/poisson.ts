import { chiSquareQuantile } from './gamma'

/** Events an hour with their count, the hours watched and an exact interval. */
export interface HourlyRate {
  count: number
  hours: number
  /** count / hours; NaN when hours is 0. */
  perHour: number
  low: number
  /** Infinity when hours is 0. */
  high: number
}

/**
 * Exact two-sided interval for the mean of a Poisson count (Garwood, Biometrika 28, 1936):
 * half the chi-square quantile α/2 with 2k, and 1 - α/2 with 2k + 2 degrees of freedom.
 */
export function poissonInterval(count: number, confidence = 0.95): { low: number; high: number } {
  const tail = (1 - confidence) / 2
  return {
    low: count === 0 ? 0 : chiSquareQuantile(tail, 2 * count) / 2,
    high: chiSquareQuantile(1 - tail, 2 * count + 2) / 2,
  }
}

/**
 * Rate of events that came `count` times in `hours` hours of watching.
 * @throws RangeError when count is no count or hours is negative: a bug in the caller.
 */
export function poissonPerHour(count: number, hours: number, confidence = 0.95): HourlyRate {
  if (!Number.isInteger(count) || count < 0 || !(hours >= 0)) {
    throw new RangeError(`${count} events in ${hours} hours is not a rate`)
  }
  if (hours === 0) {
    return { count, hours, perHour: Number.NaN, low: 0, high: Number.POSITIVE_INFINITY }
  }
  const { low, high } = poissonInterval(count, confidence)
  return { count, hours, perHour: count / hours, low: low / hours, high: high / hours }
}

/**
 * One-sided upper limit for the mean of a Poisson count (Garwood): half the chi-square quantile
 * `confidence` with 2k + 2 degrees of freedom; -ln 0.05 = 2.996 for no event at 95 %.
 */
export function poissonUpper(count: number, confidence = 0.95): number {
  return chiSquareQuantile(confidence, 2 * count + 2) / 2
}

/**
 * Hours without a single event that are needed to claim a rate below `perHour` with one-sided
 * confidence: -ln(1 - confidence) / perHour. At 95 % that is the rule of three, as -ln 0.05 = 2.996.
 */
export function hoursWithoutEventToClaim(perHour: number, confidence = 0.95): number {
  return -Math.log(1 - confidence) / perHour
}
