import type { Growth, GrowthLine } from '../../shared/present/growth'
import type { DecisionMarks } from '../../shared/replay/marks'
import { pointAtSample, sampleOfPoint } from '../../shared/replay/sample-of-point'
import { groupDigits } from '../../shared/words/en/numbers'
import { REPLAY_TRACES } from '../../shared/words/en/replay-traces'
import { type Span, spreadLabels, useWidth } from '../charts'

const HEIGHT = 132
const TOP = 16
/** Room that a name and its distance need beside the end of the line, px, and the name alone, letters. */
const NAME_WIDTH = 112
const NAME_LETTERS = 12

export interface GrowthPlotProps {
  growth: Growth
  marks: DecisionMarks
  span: Span
  /** Sample under the play head. */
  cursor: number
}

/** The distance to each gesture as the segment unrolls, over the same time as the traces. */
export function GrowthPlot({ growth, marks, span, cursor }: GrowthPlotProps) {
  const [ref, width] = useWidth<HTMLElement>()
  const { lines, top, threshold } = growth
  const step = width / Math.max(span.to - span.from - 1, 1)
  const xOf = (sample: number) => (sample - span.from) * step
  const yOf = (distance: number) => TOP + (HEIGHT - TOP) * (1 - distance / top)
  const seen = (line: GrowthLine) =>
    line.grown.map((grown, point): [number, number] => {
      return [sampleOfPoint(point, line.grown.length, marks), grown]
    })
  const labels = spreadLabels(
    lines.map((line) => ({
      line,
      y: Math.max(yOf(line.grown[line.grown.length - 1] ?? 0), TOP - 6) + 4,
    })),
  )
  const nameX = Math.min(xOf(marks.end) + 5, width - NAME_WIDTH)
  return (
    <figure class="growth" ref={ref}>
      {width > 0 && (
        <svg width={width} height={HEIGHT + 4} role="img" aria-label={spoken(growth)}>
          {threshold !== null && (
            <g class="growth-threshold">
              <path d={`M0 ${yOf(threshold)}H${width}`} />
              <text x={2} y={yOf(threshold) - 4}>
                {REPLAY_TRACES.growth.threshold(threshold)}
              </text>
            </g>
          )}
          {/* Its own drawing, so that what passes the top is cut off there. */}
          <svg width={width} height={HEIGHT} aria-hidden="true">
            {lines.map((line) => (
              <path
                key={line.name}
                class={`growth-line growth-${line.role}`}
                d={pathOf(seen(line), xOf, yOf)}
              />
            ))}
          </svg>
          {labels.map(({ line, y }) => (
            <text key={line.name} class={`growth-name growth-${line.role}`} x={nameX} y={y}>
              {shortName(line.name)} {distanceAt(line, cursor, marks)}
            </text>
          ))}
          {cursor >= span.from && cursor < span.to && (
            <path class="growth-cursor" d={`M${xOf(cursor)} 0V${HEIGHT}`} />
          )}
        </svg>
      )}
    </figure>
  )
}

/** Within the segment what has grown so far, else what it came to. */
function distanceAt({ grown }: GrowthLine, cursor: number, marks: DecisionMarks): string {
  const inside = cursor >= marks.start && cursor < marks.end
  const point = inside ? pointAtSample(cursor, grown.length, marks) : grown.length - 1
  return groupDigits(grown[point] ?? 0)
}

function shortName(name: string): string {
  return name.length <= NAME_LETTERS ? name : `${name.slice(0, NAME_LETTERS - 1)}…`
}

function pathOf(
  places: [number, number][],
  xOf: (sample: number) => number,
  yOf: (distance: number) => number,
): string {
  return places
    .map(
      ([sample, grown], i) =>
        `${i === 0 ? 'M' : 'L'}${xOf(sample).toFixed(1)} ${yOf(grown).toFixed(1)}`,
    )
    .join('')
}

function spoken({ lines }: Growth): string {
  const ends = [...lines]
    .reverse()
    .map(({ name, grown }) => REPLAY_TRACES.growth.atEnd(name, grown[grown.length - 1] ?? 0))
  return REPLAY_TRACES.growth.spoken(ends)
}
