import { spreadLabels } from '../charts/spread-labels'
import { useWidth } from '../charts/use-width'

const HEIGHT = 200
const LEFT = 52
const RIGHT = 74
const TOP = 12
const BOTTOM = 40

export interface CountPoint {
  count: number
  /** Shares of 1. */
  value: number
  low: number
  high: number
  /** Another share at the same count, drawn dashed. */
  second?: number
  /** The point for whoever does not see it. */
  spoken: string
}

export interface CountPlotProps {
  label: string
  points: readonly CountPoint[]
  /** What is counted. */
  axis: string
  /** Names at the ends of the lines. */
  names: [string, string?]
  /** Count that is marked. */
  chosen?: number
  /** A point drawn on from the curve: an estimate, drawn open. */
  estimate?: { count: number; value: number; low: number; high: number }
}

/** Shares against counts, with their intervals; steps of the count lie equally far apart. */
export function CountPlot(props: CountPlotProps) {
  const { label, points, axis, names, chosen, estimate } = props
  const [ref, width] = useWidth<HTMLElement>()
  const counts = [...points.map(({ count }) => count), ...(estimate ? [estimate.count] : [])]
  const bottom = startOf([
    ...points.flatMap(({ low, second }) => (second === undefined ? [low] : [low, second])),
    ...(estimate ? [estimate.low] : []),
  ])
  const x = (count: number) =>
    LEFT + ((width - LEFT - RIGHT) * (counts.indexOf(count) + 0.5)) / Math.max(1, counts.length)
  const y = (share: number) =>
    TOP + ((HEIGHT - TOP - BOTTOM) * (1 - Math.min(1, share))) / (1 - bottom)
  const last = points.at(-1)
  const ends = spreadLabels([
    { name: names[0], y: y(last?.value ?? 1) },
    ...(names[1] === undefined ? [] : [{ name: names[1], y: y(last?.second ?? 1) }]),
  ])
  return (
    <figure class="decide-plot" ref={ref}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} role="img" aria-label={label}>
          {[bottom, (1 + bottom) / 2, 1].map((share) => (
            <g key={share}>
              <path class="decide-grid" d={`M${LEFT} ${y(share)}H${width - RIGHT}`} />
              <text x={LEFT - 6} y={y(share) + 4} text-anchor="end">
                {Number((share * 100).toFixed(1))} %
              </text>
            </g>
          ))}
          {points.map((point) => (
            <g key={point.count} class={point.count === chosen ? 'decide-chosen' : ''}>
              <path
                class="decide-interval"
                d={`M${x(point.count)} ${y(point.low)}V${y(point.high)}`}
              />
              <circle class="decide-dot" cx={x(point.count)} cy={y(point.value)} r={4} />
              <text x={x(point.count)} y={HEIGHT - BOTTOM + 16} text-anchor="middle">
                {point.count}
              </text>
            </g>
          ))}
          <path class="decide-line" d={line(points.map((p) => [x(p.count), y(p.value)]))} />
          {names[1] !== undefined && (
            <path
              class="decide-line"
              stroke-dasharray="3 4"
              d={line(points.map((p) => [x(p.count), y(p.second ?? p.value)]))}
            />
          )}
          {estimate !== undefined && last !== undefined && (
            <g>
              <path
                class="decide-line"
                stroke-dasharray="2 3"
                d={line([
                  [x(last.count), y(last.value)],
                  [x(estimate.count), y(estimate.value)],
                ])}
              />
              <path
                class="decide-interval"
                stroke-dasharray="2 3"
                d={`M${x(estimate.count)} ${y(Math.max(bottom, estimate.low))}V${y(estimate.high)}`}
              />
              <circle class="decide-open" cx={x(estimate.count)} cy={y(estimate.value)} r={4} />
              <text x={x(estimate.count)} y={HEIGHT - BOTTOM + 16} text-anchor="middle">
                {estimate.count}?
              </text>
            </g>
          )}
          {ends.map((end) => (
            <text key={end.name} x={width - RIGHT + 6} y={end.y + 4}>
              {end.name}
            </text>
          ))}
          <text x={LEFT} y={HEIGHT - 6}>
            {axis} →
          </text>
        </svg>
      )}
      <figcaption class="unseen">{points.map(({ spoken }) => spoken).join('; ')}</figcaption>
    </figure>
  )
}

/** A start of the axis that nothing lies below. */
function startOf(lows: readonly number[]): number {
  const least = Math.min(...lows)
  return [0.95, 0.9, 0.8, 0.6, 0.4].find((start) => least >= start) ?? 0
}

function line(places: readonly [number, number][]): string {
  return places.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('')
}
