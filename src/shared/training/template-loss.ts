import { logistic } from './separation'

/** Slope of the loss over log distance ratios: a lead of a third is worth about 2 : 1 odds ×10. */
const SLOPE = 8
/** Log ratio of an example that no template of its gesture may stand for. */
const UNSERVED = 1

/** Logistic loss from -LOGISTIC_ENDS to LOGISTIC_ENDS by straight lines between so many points a unit. */
const LOGISTIC_ENDS = 40
const LOGISTIC_STEPS = 1024
const LOGISTIC = Float64Array.from({ length: 2 * LOGISTIC_ENDS * LOGISTIC_STEPS + 2 }, (_, at) =>
  logistic(at / LOGISTIC_STEPS - LOGISTIC_ENDS),
)

/** Loss of an example so far from its gesture's nearest template and from the nearest other one. */
export function exampleLoss(own: number, other: number): number {
  // With a single gesture there is no other: nearness alone counts then.
  if (!Number.isFinite(other)) return Number.isFinite(own) ? Math.log1p(own) : Math.log(0xffffffff)
  return logistic(SLOPE * (Number.isFinite(own) ? logOf(own) - logOf(other) : UNSERVED))
}

/** Natural logarithms of whole distances as they come up: the same few thousand again and again. */
const LOGS = new Float64Array(1 << 15)

/** With distances of nought counted as one. */
function logOf(distance: number): number {
  if ((distance | 0) !== distance || distance < 0 || distance >= LOGS.length) {
    return Math.log(Math.max(1, distance))
  }
  const known = LOGS[distance]!
  if (known > 0) return known
  const log = Math.log(Math.max(1, distance))
  LOGS[distance] = log
  return log
}

/** SLOPE times the logarithm of a distance: the loss of two is the logistic of their difference. */
export function slopedLog(distance: number): number {
  return SLOPE * logOf(distance)
}

/** Logistic loss, off by less than 1e-7: the curve's second derivative is at most 1/4. */
export function logisticAbout(x: number): number {
  if (x >= LOGISTIC_ENDS) return x
  if (x <= -LOGISTIC_ENDS) return 0
  const at = (x + LOGISTIC_ENDS) * LOGISTIC_STEPS
  const below = Math.trunc(at)
  const low = LOGISTIC[below]!
  return low + (at - below) * (LOGISTIC[below + 1]! - low)
}
