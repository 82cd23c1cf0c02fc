import { AXES } from '../../model/sample'
import { median } from '../../statistics/summary'
import type { Vec } from './wahba'

/** Samples with their own times, g and deg/s. */
export interface MotionSeries {
  tMs: ArrayLike<number>
  /** n × 6 row-major. */
  values: ArrayLike<number>
}

/** A series on an even grid from its first time on. */
export interface EvenSeries {
  rateHz: number
  count: number
  /** count × 6. */
  values: Float64Array
}

/** Straight lines between samples, averaged over `smoothMs` around each point. */
export function evenly(series: MotionSeries, rateHz: number): EvenSeries {
  const { tMs, values } = series
  const last = tMs.length - 1
  const spanMs = tMs[last]! - tMs[0]!
  const count = Math.max(0, Math.floor((spanMs * rateHz) / 1000) + 1)
  const out = new Float64Array(AXES * count)
  let from = 0
  for (let i = 0; i < count; i++) {
    const t = tMs[0]! + (1000 * i) / rateHz
    while (from < last - 1 && tMs[from + 1]! <= t) from++
    const step = tMs[from + 1]! - tMs[from]!
    const share = step > 0 ? Math.min(1, (t - tMs[from]!) / step) : 0
    for (let axis = 0; axis < AXES; axis++) {
      const [a, b] = [values[AXES * from + axis]!, values[AXES * (from + 1) + axis]!]
      out[AXES * i + axis] = a + share * (b - a)
    }
  }
  return { rateHz, count, values: out }
}

/** Running mean over 2 half + 1 points. */
export function smoothed(series: EvenSeries, half: number): EvenSeries {
  const { count, values } = series
  const out = new Float64Array(values.length)
  for (let axis = 0; axis < AXES; axis++) {
    for (let i = 0; i < count; i++) {
      const from = Math.max(0, i - half)
      const to = Math.min(count - 1, i + half)
      let sum = 0
      for (let k = from; k <= to; k++) sum += values[AXES * k + axis]!
      out[AXES * i + axis] = sum / (to - from + 1)
    }
  }
  return { ...series, values: out }
}

export function gyroAt({ values }: EvenSeries, i: number): Vec {
  return [values[AXES * i + 3]!, values[AXES * i + 4]!, values[AXES * i + 5]!]
}

export function accelAt({ values }: EvenSeries, i: number): Vec {
  return [values[AXES * i]!, values[AXES * i + 1]!, values[AXES * i + 2]!]
}

/** Takes the gyroscope's bias out: the median of its quietest fifth. */
export function withoutBias(series: EvenSeries): EvenSeries {
  const { count } = series
  const order = Array.from({ length: count }, (_, i) => i)
  const rate = order.map((i) => unrest(series, i))
  order.sort((a, b) => rate[a]! - rate[b]!)
  const quiet = order.slice(0, Math.max(1, Math.floor(count / 5)))
  const values = Float64Array.from(series.values)
  for (let axis = 3; axis < AXES; axis++) {
    const bias = median(quiet.map((i) => series.values[AXES * i + axis]!))
    for (let i = 0; i < count; i++) values[AXES * i + axis]! -= bias
  }
  return { ...series, values }
}

/** How much the gyroscope changes around a point, whatever its bias. */
function unrest({ values, count }: EvenSeries, i: number): number {
  let sum = 0
  for (let k = Math.max(1, i - 10); k <= Math.min(count - 1, i + 10); k++) {
    for (let axis = 3; axis < AXES; axis++) {
      sum += Math.abs(values[AXES * k + axis]! - values[AXES * (k - 1) + axis]!)
    }
  }
  return sum
}

/** |angular rate| at each point, mean taken out; the same in any axes. */
export function rateMagnitude(series: EvenSeries): Float64Array {
  const all = Float64Array.from({ length: series.count }, (_, i) =>
    Math.hypot(...gyroAt(series, i)),
  )
  const middle = all.reduce((sum, value) => sum + value, 0) / Math.max(1, all.length)
  return all.map((value) => value - middle)
}
