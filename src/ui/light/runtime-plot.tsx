import type { RuntimePoint } from '../../shared/power/runtime'
import { LIGHT_POWER } from '../../shared/words/en/light-power'
import { niceCeiling, ticks } from '../charts/scale'

const WIDTH = 340
const HEIGHT = 190
const LEFT = 44
const BOTTOM = 34
const TOP = 10
const RIGHT = 52

/** Hours against answers an hour: the typical as a line, least and most as its halo. */
export function RuntimePlot({ points, now }: { points: RuntimePoint[]; now: number }) {
  const last = points.at(-1)
  if (last === undefined) return null
  const top = niceCeiling(Math.max(...points.map(({ hours }) => hours.max)))
  const x = (answers: number) => LEFT + (answers / last.answersPerHour) * (WIDTH - LEFT - RIGHT)
  const y = (hours: number) => TOP + (1 - hours / top) * (HEIGHT - TOP - BOTTOM)
  const line = (of: 'min' | 'typ' | 'max', list = points) =>
    list.map(
      ({ answersPerHour, hours }) => `${x(answersPerHour).toFixed(1)} ${y(hours[of]).toFixed(1)}`,
    )
  const band = [...line('max'), ...line('min', [...points].reverse())]
  return (
    <svg
      class="runtime-plot"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={LIGHT_POWER.cells.falls({
        from: Math.round(points[0]!.hours.typ),
        to: Math.round(last.hours.typ),
        answersPerHour: last.answersPerHour,
      })}
    >
      <path class="plot-band" d={`M${band.join('L')}Z`} />
      <path class="plot-line" d={`M${line('typ').join('L')}`} />
      {ticks(0, top, 4).map((hours) => (
        <g key={`h${hours}`}>
          <path class="plot-grid" d={`M${LEFT} ${y(hours)}H${WIDTH - RIGHT}`} />
          <text x={LEFT - 6} y={y(hours) + 4} text-anchor="end">
            {hours}
          </text>
        </g>
      ))}
      {ticks(0, last.answersPerHour, 4).map((answers) => (
        <text key={`a${answers}`} x={x(answers)} y={HEIGHT - BOTTOM + 16} text-anchor="middle">
          {answers}
        </text>
      ))}
      {now <= last.answersPerHour && (
        <path class="plot-now" d={`M${x(now)} ${TOP}V${HEIGHT - BOTTOM}`} />
      )}
      {(['max', 'typ', 'min'] as const).map((of) => (
        <text key={of} x={WIDTH - RIGHT + 5} y={y(last.hours[of]) + 4}>
          {LIGHT_POWER.spread[of]}
        </text>
      ))}
      <text x={LEFT} y={HEIGHT - 4}>
        {LIGHT_POWER.cells.axes}
      </text>
    </svg>
  )
}
