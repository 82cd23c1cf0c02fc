import type { GestureDecision, PairReport } from '../decide/gesture-decision'

/** Pairs that need a word first, then by how seldom they are told apart. */
export function pairsInOrder(decision: GestureDecision): PairReport[] {
  const told = (pair: PairReport) => pair.told.recogniser?.value ?? 1
  return [...decision.pairs].sort(
    (a, b) =>
      Number(b.advice !== null) - Number(a.advice !== null) ||
      told(a) - told(b) ||
      a.margin.value - b.margin.value,
  )
}
