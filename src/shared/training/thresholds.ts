import { quantile } from '../statistics/summary'

/** Distances that a gesture's threshold has to tell apart. */
export interface ThresholdEvidence {
  /** Of its own takes to templates that do not come from them (other testers' where possible). */
  within: readonly number[]
  /** Of movements that are not this gesture but whose nearest gesture it is. */
  foreign: readonly number[]
  /** Of other gestures' takes to this gesture's nearest template, whatever they are nearest to. */
  between: readonly number[]
}

/**
 * Every own distance stands for a bell of distances around it, this wide in ln(distance) when there
 * are many; few takes say less about the next one, so theirs are wider. No single bell is fitted
 * to all: a tester of another manner makes a second heap, far from the first.
 */
const SPREAD = 0.2
const SPREAD_OF_FEW = 4
/** The threshold lies at most so many spreads above the farthest own distance. */
const MOST_BEYOND = 2
/** An answer to a foreign movement counts as much as this many lost takes. */
const FOREIGN_COST = 2
const STEPS = 40
/** Greatest threshold that still tells a distance from "none". */
const MOST = 0xfffffffe

/**
 * Distance up to which a movement is still the gesture: where lost own takes and answered foreign
 * movements together cost least, between the median and somewhat beyond the farthest of its own
 * takes. Beyond them the place is drawn in to where half of the other gestures' takes lie, as
 * nothing is gained farther out.
 * @returns integer, null when there is no evidence at all
 */
export function learnThreshold(evidence: ThresholdEvidence): number | null {
  const logs = evidence.within
    .filter(Number.isFinite)
    .map((distance) => Math.log(Math.max(1, distance)))
  if (logs.length === 0) return fromOthersAlone(evidence)
  const spread = SPREAD * Math.sqrt(1 + SPREAD_OF_FEW / logs.length)
  const farthest = Math.max(...logs)
  const low = quantile(logs, 0.5)
  const high = Math.max(
    farthest,
    Math.min(farthest + MOST_BEYOND * spread, middleOfOthers(evidence)),
  )
  let best = high
  let least = Number.POSITIVE_INFINITY
  for (let step = STEPS; step >= 0; step--) {
    const at = low + ((high - low) * step) / STEPS
    const lost = logs.reduce((sum, own) => sum + upperTail((at - own) / spread), 0)
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
