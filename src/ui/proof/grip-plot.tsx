import type { GripPoint, Remedy } from '../../shared/grip/grip-tolerance'
import { REMEDY_LETTERS, REMEDY_NAMES } from '../../shared/words/en/grip-words'
import { countOf, percent, percentRange } from '../../shared/words/en/numbers'
import { spreadLabels } from '../charts/spread-labels'
import { useWidth } from '../charts/use-width'

const HEIGHT = 220
const LEFT = 48
const RIGHT = 22
const TOP = 10
const BOTTOM = 24
const DASHES: Record<Remedy, string> = { mark: '2 3', gravity: '', copies: '7 4' }

export interface GripPlotProps {
  label: string
  lines: { remedy: Remedy; points: readonly GripPoint[] }[]
  limit: number
}

/** Recall against an angle: a line for each remedy, told by dash and letter, with its intervals. */
export function GripPlot({ label, lines, limit }: GripPlotProps) {
  const [ref, width] = useWidth<HTMLElement>()
  const angles = lines[0]?.points.map(({ angleDeg }) => angleDeg) ?? []
  const [from, to] = [Math.min(...angles), Math.max(...angles)]
  const xOf = (angle: number) => LEFT + ((width - LEFT - RIGHT) * (angle - from)) / (to - from || 1)
  const yOf = (share: number) => TOP + (HEIGHT - TOP - BOTTOM) * (1 - share)
  const marks = to > 90 ? [-180, -90, 0, 90, 180] : [-30, -15, 0, 15, 30]
  return (
    <figure class="grip-plot" ref={ref}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} role="img" aria-label={label}>
          {[0, 0.5, 1].map((share) => (
            <g key={share}>
              <path class="grip-grid" d={`M${LEFT} ${yOf(share)}H${width - RIGHT}`} />
              <text x={LEFT - 6} y={yOf(share) + 4} text-anchor="end">
                {share * 100} %
              </text>
            </g>
          ))}
          {marks.map((angle) => (
            <text key={angle} x={xOf(angle)} y={HEIGHT - 6} text-anchor="middle">
              {angle}°
            </text>
          ))}
          <path class="grip-limit" d={`M${LEFT} ${yOf(limit)}H${width - RIGHT}`} />
          {spreadLabels(
            lines.map(({ remedy, points }) => ({
              remedy,
              y: yOf(points.at(-1)?.recall.value ?? 0),
            })),
          ).map(({ remedy, y }) => (
            <text key={remedy} x={width - RIGHT + 6} y={y + 4}>
              {REMEDY_LETTERS[remedy]}
            </text>
          ))}
          {lines.map(({ remedy, points }) => (
            <Line key={remedy} remedy={remedy} points={points} xOf={xOf} yOf={yOf} />
          ))}
        </svg>
      )}
      <figcaption class="unseen">
        {lines.map(
          ({ remedy, points }) => `${REMEDY_NAMES[remedy]}: ${points.map(spoken).join('; ')}. `,
        )}
      </figcaption>
    </figure>
  )
}

function spoken({ angleDeg, recall }: GripPoint): string {
  return `${angleDeg}° ${percent(recall.value)} (${countOf(recall)}, ${percentRange(recall.low, recall.high)})`
}

interface LineProps {
  remedy: Remedy
  points: readonly GripPoint[]
  xOf: (angle: number) => number
  yOf: (share: number) => number
}

/** Intervals of different lines stand a little apart, so that none hides another. */
const SHIFT_PX: Record<Remedy, number> = { mark: -2, gravity: 0, copies: 2 }

function Line({ remedy, points, xOf, yOf }: LineProps) {
  const shift = SHIFT_PX[remedy]
  const path = points
    .map(({ angleDeg, recall }, i) => `${i === 0 ? 'M' : 'L'}${xOf(angleDeg)} ${yOf(recall.value)}`)
    .join('')
  return (
    <g>
      {points.map(({ angleDeg, recall }) => (
        <path
          key={angleDeg}
          class="grip-interval"
          d={`M${xOf(angleDeg) + shift} ${yOf(recall.low)}V${yOf(recall.high)}`}
        />
      ))}
      <path class="grip-line" stroke-dasharray={DASHES[remedy]} d={path} />
    </g>
  )
}
