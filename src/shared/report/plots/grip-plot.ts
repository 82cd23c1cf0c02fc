import type { GripPoint, GripTolerance, Remedy } from '../../grip/grip-tolerance'
import { REMEDY_LETTERS } from '../../words/en/grip-words'
import { REPORT_PLOTS } from '../../words/en/report-plots'
import { type Html, html } from '../html'
import { label, line, n, type Place, type Plot, pathOf } from './plot'

const WIDTH = 640
const HEIGHT = 210
const LEFT = 48
const RIGHT = 22
const TOP = 10
const BOTTOM = 38
const DASHES: Record<Remedy, string> = { mark: '2 3', gravity: '', copies: '7 4' }
/** Intervals of different lines stand a little apart, so that none hides another. */
const SHIFT: Record<Remedy, number> = { mark: -2, gravity: 0, copies: 2 }

/** Recall against roll of the grip, or against tilt of the mounting; a line for each remedy. */
export function gripPlot(grip: GripTolerance, turn: 'roll' | 'tilt'): Plot {
  const marks = turn === 'roll' ? [-180, -90, 0, 90, 180] : [-30, -15, 0, 15, 30]
  const [from, to] = [marks[0] ?? 0, marks[marks.length - 1] ?? 1]
  const x = (angle: number) => LEFT + ((WIDTH - LEFT - RIGHT) * (angle - from)) / (to - from)
  const y = (share: number) => TOP + (HEIGHT - TOP - BOTTOM) * (1 - share)
  const title = turn === 'roll' ? REPORT_PLOTS.rollRecall : REPORT_PLOTS.tiltRecall
  const body = html`${[0, 0.5, 1].map(
    (share) =>
      html`${line(`M${LEFT} ${n(y(share))}H${WIDTH - RIGHT}`, { opacity: 0.2 })}${label(LEFT - 6, y(share) + 4, `${share * 100} %`, 'end')}`,
  )}${marks.map((angle) => label(x(angle), HEIGHT - BOTTOM + 16, `${angle}°`, 'middle'))}${grip.remedies.map(
    (score, i) => remedyLine(score.remedy, score[turn], x, y, i),
  )}${label(LEFT, HEIGHT - 4, `${REPORT_PLOTS.turns[turn]}; ${letters(grip)}`)}`
  return { key: `grip-${turn}`, title, width: WIDTH, height: HEIGHT, body }
}

function letters({ remedies }: GripTolerance): string {
  return remedies
    .map(({ remedy }) => `${REMEDY_LETTERS[remedy]} ${REPORT_PLOTS.remedies[remedy]}`)
    .join(', ')
}

function remedyLine(
  remedy: Remedy,
  points: readonly GripPoint[],
  x: (angle: number) => number,
  y: (share: number) => number,
  index: number,
): Html {
  const places = points.map(({ angleDeg, recall }): Place => [x(angleDeg), y(recall.value)])
  const end = places[places.length - 1] ?? [0, 0]
  const bars = points
    .map(({ angleDeg, recall }) => {
      return `M${n(x(angleDeg) + SHIFT[remedy])} ${n(y(recall.low))}V${n(y(recall.high))}`
    })
    .join('')
  return html`${line(bars, { opacity: 0.5 })}${line(pathOf(places), { width: 1.5, dash: DASHES[remedy] })}${label(
    WIDTH - RIGHT + 6,
    end[1] + 4 + 11 * (index - 1),
    REMEDY_LETTERS[remedy],
  )}`
}
