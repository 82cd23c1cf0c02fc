import type { Evaluation } from '../../model/evaluation'
import { rowTotal } from '../../present/confused-pair'
import { REPORT_PLOTS } from '../../words/en/report-plots'
import { html } from '../html'
import { label, line, n, type Plot, short } from './plot'

const LEFT = 104
const TOP = 74
const MOST_CELL = 40
const WIDTH = 640

/** What was taken for what: a row performed, a column answered, the last column none. */
export function confusionPlot(evaluation: Evaluation): Plot {
  const { gestures, confusion } = evaluation
  const columns = gestures.length + 1
  const cell = Math.min(MOST_CELL, (WIDTH - LEFT - 8) / columns)
  const [width, height] = [LEFT + columns * cell + 8, TOP + gestures.length * cell + 8]
  const names = [...gestures.map(({ name }) => name), REPORT_PLOTS.none]
  const body = html`${names.map((name, column) => {
    const x = LEFT + (column + 0.5) * cell + 4
    return html`<g transform="translate(${n(x)} ${TOP - 6}) rotate(-50)">${label(0, 0, short(name, 13))}</g>`
  })}${gestures.map(({ name }, row) =>
    label(LEFT - 8, TOP + (row + 0.5) * cell + 4, short(name, 15), 'end'),
  )}${confusion.map((counts, row) =>
    counts.map((count, column) => {
      const [x, y] = [LEFT + column * cell, TOP + row * cell]
      const share = count / Math.max(1, rowTotal(evaluation, row))
      // Dark enough to see a single take, light enough for ink to be read on it.
      const shade = count === 0 ? 0 : 0.08 + 0.32 * share
      return html`<rect x="${n(x + 1)}" y="${n(y + 1)}" width="${n(cell - 2)}" height="${n(cell - 2)}" fill-opacity="${n(shade)}"${
        row === column ? html` stroke="currentColor" stroke-width="1"` : null
      }/>${label(x + cell / 2, y + cell / 2 + 4, count === 0 ? '·' : String(count), 'middle', count > 0)}`
    }),
  )}${line(`M${n(LEFT + gestures.length * cell)} ${TOP - 4}V${n(height - 6)}`, { dash: '2 2' })}`
  return {
    key: 'confusion',
    title: REPORT_PLOTS.confusion,
    width: Math.ceil(width),
    height: Math.ceil(height),
    body,
  }
}
