import type { ComponentChildren } from 'preact'
import type { Evaluation } from '../../shared/model/evaluation'
import { rowTotal } from '../../shared/present/confused-pair'
import { CHARTS } from '../../shared/words/en/charts'

/** A cell of the matrix; `answer` null is the reject column. */
export interface Cell {
  truth: number
  answer: number | null
}

export interface ConfusionMatrixProps {
  evaluation: Evaluation
  /** Address of the list of a cell's takes. */
  hrefOf: (cell: Cell) => string
  /** Picture of a gesture for the margins. */
  picture: (gestureId: string) => ComponentChildren
}

/** Rows performed, columns answered, the last column reject. Cells with takes can be tapped. */
export function ConfusionMatrix({ evaluation, hrefOf, picture }: ConfusionMatrixProps) {
  const { gestures } = evaluation
  return (
    <div class="confusion-scroll">
      <table class="confusion" style={{ '--columns': gestures.length + 1 }}>
        <caption>{CHARTS.confusionCaption}</caption>
        <thead>
          <tr>
            <td />
            {gestures.map((gesture) => (
              <th key={gesture.id} scope="col">
                {picture(gesture.id)}
                <span>{gesture.name}</span>
              </th>
            ))}
            <th scope="col">
              <NonePicture />
              <span>{CHARTS.none}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {gestures.map((gesture, truth) => (
            <tr key={gesture.id}>
              <th scope="row">
                {picture(gesture.id)}
                <span>{gesture.name}</span>
              </th>
              {(evaluation.confusion[truth] ?? []).map((count, column) => {
                const cell = { truth, answer: column === gestures.length ? null : column }
                return (
                  <CellView
                    key={gestures[column]?.id ?? 'none'}
                    cell={cell}
                    count={count}
                    total={rowTotal(evaluation, truth)}
                    label={cellLabel(evaluation, cell, count)}
                    href={hrefOf(cell)}
                  />
                )
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

interface CellViewProps {
  cell: Cell
  count: number
  total: number
  label: string
  href: string
}

function CellView({ cell, count, total, label, href }: CellViewProps) {
  const right = cell.truth === cell.answer ? ' confusion-right' : ''
  if (count === 0) return <td class={`confusion-zero${right}`}>·</td>
  const share = count / total
  return (
    <td class={`confusion-cell${right}${share > 0.5 ? ' confusion-dark' : ''}`}>
      <a href={href} aria-label={label} style={{ '--share': `${shadePercent(share)}%` }}>
        {count}
      </a>
    </td>
  )
}

/**
 * Share of ink in the ground behind a count, percent. It leaves the middle out, where neither ink nor
 * ground would read: up to one half ink stands on it, above that the ground's colour.
 */
export function shadePercent(share: number): number {
  return share > 0.5 ? 66 + (share - 0.5) * 48 : 8 + share * 52
}

function cellLabel(evaluation: Evaluation, cell: Cell, count: number): string {
  const performed = evaluation.gestures[cell.truth]?.name ?? ''
  const answered =
    cell.answer === null ? CHARTS.noneOfThese : (evaluation.gestures[cell.answer]?.name ?? '')
  const total = rowTotal(evaluation, cell.truth)
  return CHARTS.cellDescribed(performed, answered, count, total)
}

function NonePicture() {
  return (
    <svg class="ribbon" viewBox="0 0 48 48" width="30" height="30" aria-hidden="true">
      <path d="M14 14 34 34M34 14 14 34" fill="none" stroke="currentcolor" stroke-width="2" />
    </svg>
  )
}
