import type { Evaluation } from '../../shared/model/evaluation'
import type { Cell } from '../charts'
import { route } from '../common'

const NONE = 'none'

/** Address of the takes in one cell of the matrix. */
export function cellRoute(evaluation: Evaluation, cell: Cell): string {
  const performed = evaluation.gestures[cell.truth]?.id ?? ''
  const answered = cell.answer === null ? NONE : (evaluation.gestures[cell.answer]?.id ?? '')
  return route('proof', 'cell', performed, answered)
}

/** Address of the takes of two gestures that were answered as the other. */
export function pairRoute(evaluation: Evaluation, first: number, second: number): string {
  const id = (index: number) => evaluation.gestures[index]?.id ?? ''
  return route('proof', 'pair', id(first), id(second))
}

/** The takes an address means; null when it means none of this evaluation. */
export function cellsOf(rest: string[], evaluation: Evaluation): Cell[] | null {
  const [kind, a = '', b = ''] = rest
  const indexOf = (id: string) => evaluation.gestures.findIndex((gesture) => gesture.id === id)
  const [first, second] = [indexOf(a), indexOf(b)]
  if (kind === 'cell' && first >= 0 && b === NONE) return [{ truth: first, answer: null }]
  if (first < 0 || second < 0) return null
  if (kind === 'cell') return [{ truth: first, answer: second }]
  if (kind !== 'pair') return null
  return [
    { truth: first, answer: second },
    { truth: second, answer: first },
  ]
}
