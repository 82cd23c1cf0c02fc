import type { GestureDecision, KeptSet } from '../../decide/gesture-decision'
import { countOf, percent, percentRange } from './numbers'

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

/** How good the best set of a size is, in one sentence. */
export function setSentence(decision: GestureDecision, set: KeptSet): string {
  const { kept, dropped } = namesOf(decision, set)
  const what =
    dropped.length === 0
      ? `All ${kept.length}`
      : `The best ${kept.length} leave out ${dropped.join(', ')}`
  const worst =
    set.worst === null || set.worstPair >= 1
      ? ''
      : `; worst pair ${set.worst.map((i) => decision.gestures[i]?.name ?? '').join(' and ')}, ${percent(set.worstPair)} told apart`
  const takes = dropped.length === 0 ? 'of held-out takes' : 'of the takes it was chosen by'
  return `${what}: ${percent(set.score)} ${takes} nearest to their own${worst}.`
}

/** What a set that was chosen by its figure is worth for a tester who had no say in it. */
export function unseenSentence({ unseen }: KeptSet): string {
  if (unseen.n === 0)
    return 'Chosen and judged on the same takes, as there is one tester: expect less of a new hand.'
  return `Chosen without the tester who then performs it: ${percent(unseen.value)} (${countOf(unseen)}, ${percentRange(unseen.low, unseen.high)}).`
}

/** How sure it is that no set is better. */
export function provenSentence(set: KeptSet): string {
  return set.proven
    ? 'No set of this size is better on these takes.'
    : `Searched in part: no set of this size has more than ${percent(set.bound)}.`
}

/** What stands for a set in a plot, as shares of 1. */
export interface SetPoint {
  count: number
  value: number
  low: number
  high: number
  /** Of the worst pair, on the takes that the set was chosen by. */
  second: number
  spoken: string
}

/** A set as it does for testers who had no say in it; with one tester on its own takes, without an interval. */
export function setPoint({ members, unseen, score, worstPair }: KeptSet): SetPoint {
  const count = members.length
  if (unseen.n === 0) {
    const spoken = `${count}: ${percent(score)} on the takes it was chosen by`
    return { count, value: score, low: score, high: score, second: worstPair, spoken }
  }
  const { value, low, high } = unseen
  const spoken = `${count}: ${percent(value)} (${percentRange(low, high)})`
  return { count, value, low, high, second: worstPair, spoken }
}

/** What the points and bars of sets are. */
export function setsBasis(sets: readonly KeptSet[]): string {
  const points = sets.some(({ unseen }) => unseen.n > 0)
    ? 'Points are takes of a tester without whom the set was chosen, bars their 95 % intervals over testers; the worst pair is that of the takes the set was chosen by.'
    : 'Points are the takes that the set was chosen by, as there is one tester: they have no interval.'
  return `${points} Nearest take wins, and nothing is rejected.`
}

/** Size of the largest set that does well for testers without a say; the smallest when none does. */
export function largestGoodSize(sets: readonly KeptSet[]): number {
  const good = sets
    .filter((set) => setPoint(set).value >= WELL)
    .map(({ members }) => members.length)
  return good.length > 0 ? Math.max(...good) : (sets[0]?.members.length ?? 0)
}
