import type { GestureDecision, KeptSet } from '../decide/gesture-decision'

/** Share of takes that a set has to reach to be said to do well. */
const WELL = 0.98

/** Names of the gestures of a set, and of those left out. */
export function namesOf({ gestures, profiles }: GestureDecision, { members }: KeptSet) {
  const name = (index: number) => gestures[index]?.name ?? ''
  const measured = profiles.map(({ gesture }) => gesture)
  return {
    kept: members.map(name),
    dropped: measured.filter((gesture) => !members.includes(gesture)).map(name),
  }
}

/** What stands for a set in a plot, as shares of 1. */
export interface SetPoint {
  count: number
  value: number
  low: number
  high: number
  /** Of the worst pair, on the takes that the set was chosen by. */
  second: number
}

/** A set as it does for testers who had no say in it; with one tester on its own takes, without an interval. */
export function setPoint({ members, unseen, score, worstPair }: KeptSet): SetPoint {
  const count = members.length
  if (unseen.n === 0) {
    return { count, value: score, low: score, high: score, second: worstPair }
  }
  const { value, low, high } = unseen
  return { count, value, low, high, second: worstPair }
}

/** Size of the largest set that does well for testers without a say; the smallest when none does. */
export function largestGoodSize(sets: readonly KeptSet[]): number {
  const good = sets
    .filter((set) => setPoint(set).value >= WELL)
    .map(({ members }) => members.length)
  return good.length > 0 ? Math.max(...good) : (sets[0]?.members.length ?? 0)
}
