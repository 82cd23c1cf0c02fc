import type { Evaluation } from '../model/evaluation'
import { CONFUSED_PAIR } from '../words/en/confused-pair'

/** Two gestures that were taken for one another most often. */
export interface ConfusedPair {
  /** Indices in `Evaluation.gestures`. */
  first: number
  second: number
  /** Takes of either answered as the other. */
  hits: number
  /** Takes of either. */
  n: number
  takeIds: string[]
}

/** The pair with the largest share of takes answered as the other; null when there is none. */
export function mostConfusedPair(evaluation: Evaluation): ConfusedPair | null {
  let best: ConfusedPair | null = null
  for (let first = 0; first < evaluation.gestures.length; first++) {
    for (let second = first + 1; second < evaluation.gestures.length; second++) {
      const hits = cell(evaluation, first, second) + cell(evaluation, second, first)
      const n = rowTotal(evaluation, first) + rowTotal(evaluation, second)
      if (hits === 0 || (best !== null && hits * best.n <= best.hits * n)) continue
      best = { first, second, hits, n, takeIds: [] }
    }
  }
  if (best === null) return null
  const { first, second } = best
  const swapped = evaluation.outcomes.filter(
    ({ truth, answer }) =>
      (truth === first && answer === second) || (truth === second && answer === first),
  )
  return { ...best, takeIds: swapped.map((outcome) => outcome.takeId) }
}

/** 'Ring and Sweep are confused in 6 of 40 takes.' */
export function confusedPairSentence(evaluation: Evaluation, pair: ConfusedPair): string {
  const first = evaluation.gestures[pair.first]?.name ?? ''
  const second = evaluation.gestures[pair.second]?.name ?? ''
  return CONFUSED_PAIR.confused({ first, second, hits: pair.hits, n: pair.n })
}

/** Takes that fell into one cell; `answer` null is the reject column. */
export function takesInCell(
  evaluation: Evaluation,
  truth: number,
  answer: number | null,
): string[] {
  return evaluation.outcomes
    .filter((outcome) => outcome.truth === truth && outcome.answer === answer)
    .map((outcome) => outcome.takeId)
}

/** Cells off the diagonal that hold takes, most takes first; ties in the order of the matrix. */
export function wrongCells(
  evaluation: Evaluation,
): { truth: number; answer: number | null; count: number }[] {
  const reject = evaluation.gestures.length
  return evaluation.confusion
    .flatMap((row, truth) =>
      row.map((count, column) => ({ truth, answer: column === reject ? null : column, count })),
    )
    .filter(({ truth, answer, count }) => count > 0 && truth !== answer)
    .sort((a, b) => b.count - a.count)
}

export function rowTotal(evaluation: Evaluation, row: number): number {
  return (evaluation.confusion[row] ?? []).reduce((sum, count) => sum + count, 0)
}

function cell(evaluation: Evaluation, row: number, column: number): number {
  return evaluation.confusion[row]?.[column] ?? 0
}
