import type { Evaluation } from '../../shared/model/evaluation'
import { wrongCells } from '../../shared/present/confused-pair'
import { PROOF } from '../../shared/words/en/proof'
import { cellRoute } from './routes'

/** Every cell off the diagonal as a line of its own, most takes first: easier to tap, and to read. */
export function Mistakes({ evaluation }: { evaluation: Evaluation }) {
  const cells = wrongCells(evaluation)
  if (cells.length === 0) return null
  const name = (index: number) => evaluation.gestures[index]?.name ?? ''
  return (
    <ul class="outcomes">
      {cells.map((cell) => (
        <li key={`${cell.truth} ${cell.answer}`}>
          <a class="outcome" href={cellRoute(evaluation, cell)}>
            <b>{cell.count}</b>
            <span>
              {name(cell.truth)} →{' '}
              {cell.answer === null ? PROOF.answeredNoneShort : name(cell.answer)}
            </span>
            <span class="quiet" aria-hidden="true">
              ›
            </span>
          </a>
        </li>
      ))}
    </ul>
  )
}
