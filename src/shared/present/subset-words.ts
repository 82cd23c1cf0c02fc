import type { GestureDecision, KeptSet } from '../decide/gesture-decision'
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
  return `${what}: ${percent(set.score)} of held-out takes nearest to their own${worst}.`
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

/** Size of the largest set that does well; the smallest there is when none does. */
export function largestGoodSize(sets: readonly KeptSet[]): number {
  const good = sets.filter(({ score }) => score >= WELL).map(({ members }) => members.length)
  return good.length > 0 ? Math.max(...good) : (sets[0]?.members.length ?? 0)
}
