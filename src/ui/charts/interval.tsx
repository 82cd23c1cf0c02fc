import type { Rate } from '../../shared/model/evaluation'
import { countOf, percent, percentRange } from '../../shared/present/numbers'

export interface IntervalProps {
  value: number
  low: number
  high: number
  /** End of the axis; it starts at 0. */
  max: number
  /** Spoken instead of the picture. */
  label: string
}

/** A dot on its interval. Ends beyond the axis are drawn open. */
export function Interval({ value, low, high, max, label }: IntervalProps) {
  if (!Number.isFinite(low) || !Number.isFinite(high)) {
    return <div class="interval interval-empty" role="img" aria-label={label} />
  }
  const at = (x: number) => `${(Math.min(Math.max(x / max, 0), 1) * 100).toFixed(2)}%`
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

/** A share as dot and interval on 0 to 1, with percent and count as text. */
export function RateBar({ rate, name }: { rate: Rate; name: string }) {
  const label = `${name}: ${percent(rate.value)}, ${countOf(rate)}, 95 % interval ${percentRange(rate.low, rate.high)}`
  return (
    <div class="rate">
      <span class="rate-name">{name}</span>
      <Interval value={rate.value} low={rate.low} high={rate.high} max={1} label={label} />
      <span class="rate-value">{percent(rate.value)}</span>
      <span class="rate-count">{countOf(rate)}</span>
    </div>
  )
}
