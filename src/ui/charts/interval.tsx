import type { Rate } from '../../shared/model/evaluation'
import { CHARTS } from '../../shared/words/en/charts'
import { countOf, percent } from '../../shared/words/en/numbers'

export interface IntervalProps {
  value: number
  low: number
  high: number
  /** Ends of the axis; it starts at 0 by default. */
  min?: number
  max: number
  /** Spoken instead of the picture. */
  label: string
}

/** A dot on its interval. Ends beyond the axis are drawn open. */
export function Interval({ value, low, high, min = 0, max, label }: IntervalProps) {
  if (!Number.isFinite(low) || !Number.isFinite(high)) {
    return <div class="interval interval-empty" role="img" aria-label={label} />
  }
  const at = (x: number) =>
    `${(Math.min(Math.max((x - min) / (max - min), 0), 1) * 100).toFixed(2)}%`
  const open = high > max ? ' interval-open' : ''
  return (
    <div
      class={`interval${open}`}
      role="img"
      aria-label={label}
      style={{ '--low': at(low), '--high': at(high), '--value': at(value) }}
    >
      <i class="interval-range" />
      {Number.isFinite(value) && <i class="interval-dot" />}
    </div>
  )
}

export interface RateBarProps {
  rate: Rate
  name: string
  /** Start of the axis, which ends at 1; see rateAxisStart. */
  from?: number
}

/** A share as dot and interval, with percent and count as text. */
export function RateBar({ rate, name, from = 0 }: RateBarProps) {
  const label = CHARTS.rateDescribed(name, rate)
  return (
    <div class="rate">
      <span class="rate-name">{name}</span>
      <Interval
        value={rate.value}
        low={rate.low}
        high={rate.high}
        min={from}
        max={1}
        label={label}
      />
      <span class="rate-value">{percent(rate.value)}</span>
      <span class="rate-count">{countOf(rate)}</span>
    </div>
  )
}

/** Words at the two ends of the axis of the rates below it. */
export function RateAxis({ from }: { from: number }) {
  return (
    <div class="rate rate-axis" aria-hidden="true">
      <span />
      <span class="rate-ends">
        <span>{from * 100} %</span>
        <span>100 %</span>
      </span>
      <span />
      <span />
    </div>
  )
}

/** A common start of the axis that no interval lies below: 0, 50, 80 or 90 %. */
export function rateAxisStart(rates: Rate[]): number {
  const lowest = Math.min(...rates.filter((rate) => rate.n > 0).map((rate) => rate.low))
  return [0.9, 0.8, 0.5].find((start) => lowest >= start) ?? 0
}
