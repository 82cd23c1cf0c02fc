import { type TradeOffPoint, tradeOffAt, tradeOffCurve } from '../../evaluation/trade-off'
import type { Evaluation } from '../../model/evaluation'
import { shortNumber } from '../../words/en/numbers'
import { REPORT_PLOTS } from '../../words/en/report-plots'
import { html } from '../html'
import { label, line, n, type Place, type Plot, pathOf } from './plot'

const WIDTH = 640
const HEIGHT = 250
const LEFT = 52
const RIGHT = 16
const TOP = 12
const BOTTOM = 42
/** Axes are stretched near 0 by this root. */
const DEGREE = 2

/** Misses against false activations over all threshold factors, both with their intervals. */
export function tradeOffPlot(evaluation: Evaluation): Plot | null {
  if (evaluation.background === null) return null
  const curve = tradeOffCurve(evaluation)
  const chosen = tradeOffAt(evaluation, evaluation.thresholdFactor)
  const ends = (point: TradeOffPoint) => point.background ?? { perHour: 0, low: 0, high: 0 }
  const mostHours = Math.max(1, ...curve.map((point) => ends(point).high))
  const mostMissed = Math.max(0.05, ...curve.map(({ missed }) => missed.high))
  const x = (perHour: number) =>
    LEFT + (WIDTH - LEFT - RIGHT) * (Math.min(perHour, mostHours) / mostHours) ** (1 / DEGREE)
  const y = (share: number) =>
    HEIGHT - BOTTOM - (HEIGHT - TOP - BOTTOM) * (share / mostMissed) ** (1 / DEGREE)
  const across = (end: 'low' | 'high') =>
    curve.map((point): Place => [x(ends(point).perHour), y(point.missed[end])])
  const band = `${pathOf([...across('low'), ...across('high').reverse()])}Z`
  const { missed } = chosen
  const here = ends(chosen)
  const cross = `M${n(x(here.low))} ${n(y(missed.value))}H${n(x(here.high))}M${n(x(here.perHour))} ${n(y(missed.low))}V${n(y(missed.high))}`
  const body = html`<path d="${band}" fill-opacity="0.12"/>
${steps(mostMissed).map(
  (share) =>
    html`${line(`M${LEFT} ${n(y(share))}H${WIDTH - RIGHT}`, { opacity: 0.2 })}${label(LEFT - 6, y(share) + 4, `${shortNumber(share * 100)} %`, 'end')}`,
)}${steps(mostHours).map((perHour) => label(x(perHour), HEIGHT - BOTTOM + 16, shortNumber(perHour), 'middle'))}
${line(pathOf(curve.map((point): Place => [x(ends(point).perHour), y(point.missed.value)])), { width: 1.5 })}
${line(cross)}<circle cx="${n(x(here.perHour))}" cy="${n(y(missed.value))}" r="4"/>
${label(4, HEIGHT - 6, REPORT_PLOTS.upMissed)}${label(WIDTH - RIGHT, HEIGHT - 6, REPORT_PLOTS.rightActivations, 'end')}`
  const title = REPORT_PLOTS.tradeOff
  return { key: 'trade-off', title, width: WIDTH, height: HEIGHT, body }
}

/** 0, the end, and a few round values between them. */
function steps(top: number): number[] {
  const round = [0.05, 0.25, 0.5].map((share) => Number((top * share).toPrecision(1)))
  return [...new Set([0, ...round, Number(top.toPrecision(2))])]
}
