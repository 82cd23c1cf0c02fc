import { mean, quantile, standardDeviation } from '../statistics/summary'

/** Distances that a gesture's threshold has to tell apart. */
export interface ThresholdEvidence {
  /** Of its own takes to templates that do not come from them (other testers' where possible). */
  within: readonly number[]
  /** Of movements that are not this gesture but whose nearest gesture it is. */
  foreign: readonly number[]
  /** Of other gestures' takes to this gesture's nearest template, whatever they are nearest to. */
  between: readonly number[]
}

/** Own takes are taken as log-normal; this many standard deviations above their mean is the most. */
const UPPER_SIGMA = 2.6
/** And this many the least, however many foreign movements come near. */
const LOWER_SIGMA = 0.8
/** Spread of ln(distance) assumed at least: few takes look more alike than they are. */
const LEAST_SIGMA = 0.18
/** An answer to a foreign movement counts as much as this many lost takes. */
const FOREIGN_COST = 0.5
const STEPS = 40
/** Greatest threshold that still tells a distance from "none". */
const MOST = 0xfffffffe

/**
 * Distance up to which a movement is still the gesture. Between a lower and an upper quantile of its
 * own takes' distances (as the log-normal that fits them) the place is chosen where lost takes and
 * answered foreign movements together cost least; the upper quantile is drawn in to where half of
 * the other gestures' takes lie, as nothing is gained beyond.
 * @returns integer, null when there is no evidence at all
 */
export function learnThreshold(evidence: ThresholdEvidence): number | null {
  const within = evidence.within.filter((distance) => Number.isFinite(distance))
  if (within.length === 0) return fromOthersAlone(evidence)
  const logs = within.map((distance) => Math.log(Math.max(1, distance)))
  const centre = mean(logs)
  const sigma = logs.length < 2 ? LEAST_SIGMA : Math.max(LEAST_SIGMA, standardDeviation(logs))
  const low = centre + LOWER_SIGMA * sigma
  const high = Math.max(low, Math.min(centre + UPPER_SIGMA * sigma, middleOfOthers(evidence)))

  let best = high
  let least = Number.POSITIVE_INFINITY
  for (let step = STEPS; step >= 0; step--) {
    const at = low + ((high - low) * step) / STEPS
    const lost = within.length * upperTail((at - centre) / sigma)
    const answered = evidence.foreign.filter((distance) => distance <= Math.exp(at)).length
    const cost = lost + FOREIGN_COST * answered
    if (cost < least) [least, best] = [cost, at]
  }
  return clampThreshold(Math.exp(best))
}

/** One take gives no distance to itself: half way, in logarithms, to the nearest others. */
function fromOthersAlone({ between, foreign }: ThresholdEvidence): number | null {
  const others = [...between, ...foreign].filter(Number.isFinite)
  return others.length === 0 ? null : clampThreshold(0.5 * quantile(others, 0.1))
}

function middleOfOthers({ between }: ThresholdEvidence): number {
  return between.length === 0
    ? Number.POSITIVE_INFINITY
    : Math.log(Math.max(1, quantile(between, 0.5)))
}

export function clampThreshold(value: number): number {
  return Math.max(0, Math.min(MOST, Math.round(value)))
}

/**
 * Share of a normal distribution above z. Logistic approximation (Bowling et al., J. Ind. Eng.
 * Manag. 2(1), 2009), off by less than 0.00014: this only weighs one cost against another.
 */
function upperTail(z: number): number {
  return 1 / (1 + Math.exp(0.07056 * z ** 3 + 1.5976 * z))
}
