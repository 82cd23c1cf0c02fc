import type { TradeOffPoint } from '../../shared/evaluation/trade-off'
import type { BackgroundScore } from '../../shared/model/evaluation'
import { shortNumber } from '../../shared/words/en/numbers'
import { PROOF } from '../../shared/words/en/proof'
import { spokenPoint } from '../../shared/words/en/trade-off-words'
import { niceCeiling } from '../charts'
import { rootShare, rootTicks } from '../charts/scale'
import { useWidth } from '../charts/use-width'

const HEIGHT = 220
const LEFT = 48
const RIGHT = 12
const TOP = 10
const BOTTOM = 40
/** Cube roots on both axes: what anybody would accept lies close to 0. */
const DEGREE = 3

interface Scales {
  x: (perHour: number) => number
  y: (share: number) => number
}

export interface TradeOffPlotProps {
  curve: readonly TradeOffPoint[]
  point: TradeOffPoint
}

/**
 * The curve over all factors in its 95 % bands, and the chosen point with both of its intervals.
 * Band: between the Wilson ends of the misses, and between the Garwood ends of the activations.
 */
export function TradeOffPlot({ curve, point }: TradeOffPlotProps) {
  const [ref, width] = useWidth<HTMLElement>()
  const mostHours = niceCeiling(Math.max(...curve.map((one) => rateOf(one).high)))
  const mostMissed = Math.min(1, niceCeiling(Math.max(...curve.map((one) => one.missed.high))))
  const scales: Scales = {
    x: (perHour) => LEFT + (width - LEFT - RIGHT) * rootShare(perHour, mostHours, DEGREE),
    y: (share) => TOP + (HEIGHT - TOP - BOTTOM) * (1 - rootShare(share, mostMissed, DEGREE)),
  }
  return (
    <figure class="trade-off-plot" ref={ref}>
      {width > 0 && (
        <svg width={width} height={HEIGHT} role="img" aria-label={spokenPoint(point)}>
          <path class="trade-off-band" d={bandOfMisses(curve, scales)} />
          <path class="trade-off-band" d={bandOfActivations(curve, scales)} />
          <Axes scales={scales} width={width} mostHours={mostHours} mostMissed={mostMissed} />
          <path
            class="trade-off-line"
            d={path(
              curve.map((one) => [scales.x(rateOf(one).perHour), scales.y(one.missed.value)]),
            )}
          />
          <Chosen point={point} scales={scales} />
        </svg>
      )}
    </figure>
  )
}

interface AxesProps {
  scales: Scales
  width: number
  mostHours: number
  mostMissed: number
}

function Axes({ scales, width, mostHours, mostMissed }: AxesProps) {
  return (
    <>
      {rootTicks(mostMissed, DEGREE, 0.14).map((share) => (
        <g key={share}>
          <path class="trade-off-grid" d={`M${LEFT} ${scales.y(share)}H${width - RIGHT}`} />
          <text x={LEFT - 6} y={scales.y(share) + 4} text-anchor="end">
            {shortNumber(share * 100)} %
          </text>
        </g>
      ))}
      {rootTicks(mostHours, DEGREE, 0.14).map((perHour) => (
        <text
          key={perHour}
          x={scales.x(perHour)}
          y={HEIGHT - BOTTOM + 16}
          text-anchor={perHour === mostHours ? 'end' : 'middle'}
        >
          {shortNumber(perHour)}
        </text>
      ))}
      <text x={width - RIGHT} y={HEIGHT - 4} text-anchor="end">
        {PROOF.tradeOffAcross}
      </text>
      <text x={LEFT - 40} y={HEIGHT - 4}>
        {PROOF.tradeOffUp}
      </text>
    </>
  )
}

function Chosen({ point, scales: { x, y } }: { point: TradeOffPoint; scales: Scales }) {
  const { perHour, low, high } = rateOf(point)
  const { missed } = point
  return (
    <g class="trade-off-chosen">
      <path d={`M${x(low)} ${y(missed.value)}H${x(high)}`} />
      <path d={`M${x(perHour)} ${y(missed.low)}V${y(missed.high)}`} />
      <circle cx={x(perHour)} cy={y(missed.value)} r={6} />
    </g>
  )
}

function rateOf({ background }: TradeOffPoint): Pick<BackgroundScore, 'perHour' | 'low' | 'high'> {
  return background ?? { perHour: 0, low: 0, high: 0 }
}

function bandOfMisses(curve: readonly TradeOffPoint[], { x, y }: Scales): string {
  const ends = (end: 'low' | 'high') =>
    curve.map((one): Place => [x(rateOf(one).perHour), y(one.missed[end])])
  return `${path([...ends('low'), ...ends('high').reverse()])}Z`
}

function bandOfActivations(curve: readonly TradeOffPoint[], { x, y }: Scales): string {
  const ends = (end: 'low' | 'high') =>
    curve.map((one): Place => [x(rateOf(one)[end]), y(one.missed.value)])
  return `${path([...ends('low'), ...ends('high').reverse()])}Z`
}

type Place = [x: number, y: number]

function path(places: readonly Place[]): string {
  return places.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('')
}
