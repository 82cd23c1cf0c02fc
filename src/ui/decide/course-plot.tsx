import { spreadLabels } from '../charts/spread-labels'
import { useWidth } from '../charts/use-width'

const HEIGHT = 150
const LEFT = 8
const RIGHT = 82
const TOP = 22
const BOTTOM = 8
const DASHES = ['', '5 4']

export interface CourseLine {
  name: string
  mean: readonly number[]
  deviation: readonly number[]
}

export interface CoursePlotProps {
  label: string
  title: string
  lines: readonly CourseLine[]
}

/** Means of one axis over the movement, with bands of one standard deviation, named at their ends. */
export function CoursePlot({ label, title, lines }: CoursePlotProps) {
  const [ref, width] = useWidth<HTMLElement>()
  const ends = lines.flatMap(({ mean, deviation }) =>
    mean.flatMap((value, i) => [value - deviation[i]!, value + deviation[i]!]),
  )
  const [least, most] = [Math.min(...ends), Math.max(...ends)]
  const x = (i: number, count: number) =>
    LEFT + ((width - LEFT - RIGHT) * i) / Math.max(1, count - 1)
  const y = (value: number) =>
    TOP + ((HEIGHT - TOP - BOTTOM) * (most - value)) / Math.max(1, most - least)
  const places = (values: readonly number[]) =>
    values.map((value, i) => `${x(i, values.length).toFixed(1)} ${y(value).toFixed(1)}`)
  const labels = spreadLabels(lines.map(({ name, mean }) => ({ name, y: y(mean.at(-1) ?? 0) })))
  return (
    <figure class="decide-plot" ref={ref}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} role="img" aria-label={label}>
          <text x={LEFT} y={13}>
            {title}
          </text>
          {lines.map(({ name, mean, deviation }) => {
            const upper = mean.map((value, i) => value + deviation[i]!)
            const lower = mean.map((value, i) => value - deviation[i]!)
            const band = [...places(upper), ...places(lower).reverse()].join('L')
            return <path key={name} class="decide-band" d={`M${band}Z`} />
          })}
          {lines.map(({ name, mean }, i) => (
            <path
              key={name}
              class="decide-line"
              stroke-dasharray={DASHES[i]}
              d={`M${places(mean).join('L')}`}
            />
          ))}
          {labels.map((end) => (
            <text key={end.name} x={width - RIGHT + 6} y={end.y + 4}>
              {end.name}
            </text>
          ))}
        </svg>
      )}
    </figure>
  )
}
