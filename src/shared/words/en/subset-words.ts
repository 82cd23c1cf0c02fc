import type { GestureDecision, KeptSet } from '../../decide/gesture-decision'
import { namesOf } from '../../present/kept-sets'
import { countOf, percent, percentRange } from './numbers'

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

/** A set in a plot, for those who cannot see it. */
export function spokenSet({ members, unseen, score }: KeptSet): string {
  const count = members.length
  return unseen.n === 0
    ? `${count}: ${percent(score)} on the takes it was chosen by`
    : `${count}: ${percent(unseen.value)} (${percentRange(unseen.low, unseen.high)})`
}

/** What the points and bars of sets are. */
export function setsBasis(sets: readonly KeptSet[]): string {
  const points = sets.some(({ unseen }) => unseen.n > 0)
    ? 'Points are takes of a tester without whom the set was chosen, bars their 95 % intervals over testers; the worst pair is that of the takes the set was chosen by.'
    : 'Points are the takes that the set was chosen by, as there is one tester: they have no interval.'
  return `${points} Nearest take wins, and nothing is rejected.`
}
