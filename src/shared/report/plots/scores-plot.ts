import type { Evaluation, Rate } from '../../model/evaluation'
import { REPORT_PLOTS } from '../../words/en/report-plots'
import { type Html, html } from '../html'
import { label, line, n, type Plot, short } from './plot'

const WIDTH = 640
const LEFT = 124
const RIGHT = 112
const ROW = 34
const TOP = 44
const BOTTOM = 8

/** Recall and precision of each gesture with their 95 % intervals on one axis. */
export function scoresPlot({ scores }: Evaluation): Plot {
  const lows = scores.flatMap(({ recall, precision }) => [recall.low, precision.low])
  const from = Math.min(0.9, Math.floor(Math.min(1, ...lows.filter(Number.isFinite)) * 10) / 10)
  const x = (share: number) => LEFT + ((WIDTH - LEFT - RIGHT) * (share - from)) / (1 - from)
  const height = TOP + scores.length * ROW + BOTTOM
  const marks = Array.from({ length: Math.round((1 - from) * 10) + 1 }, (_, i) => from + i / 10)
  const body = html`${label(4, 14, REPORT_PLOTS.scoresLegend)}${marks.map(
    (share, i) =>
      html`${line(`M${n(x(share))} ${TOP - 6}V${height - BOTTOM}`, { opacity: 0.2 })}${
        marks.length > 6 && i % 2 === 1
          ? null
          : label(x(share), TOP - 12, `${Math.round(share * 100)} %`, 'middle')
      }`,
  )}${scores.map(({ name, recall, precision }, i) => {
    const y = TOP + i * ROW
    return html`${label(4, y + 20, short(name, 17), 'start', true)}${row('recall', recall, y + 9, x)}${row(
      'precision',
      precision,
      y + 24,
      x,
    )}`
  })}`
  const title = REPORT_PLOTS.scores
  return { key: 'recall-precision', title, width: WIDTH, height, body }
}

function row(
  word: 'recall' | 'precision',
  rate: Rate,
  y: number,
  x: (share: number) => number,
): Html {
  const known = rate.n > 0
  return html`${known ? interval(rate, y, x, word === 'precision') : null}${label(
    WIDTH - 4,
    y + 4,
    REPORT_PLOTS.scoreLine(word, known ? rate : null),
    'end',
  )}`
}

/** A filled dot for recall, an open one for precision, on the line of its interval. */
function interval(rate: Rate, y: number, x: (share: number) => number, open: boolean): Html {
  const ends = `M${n(x(rate.low))} ${y}H${n(x(rate.high))}M${n(x(rate.low))} ${y - 4}v8M${n(x(rate.high))} ${y - 4}v8`
  return html`${line(ends)}<circle cx="${n(x(rate.value))}" cy="${y}" r="3.5"${
    open ? html` fill="none" stroke="currentColor"` : null
  }/>`
}
