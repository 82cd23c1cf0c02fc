import { mean, quantile, standardDeviation } from '../statistics/summary'
import type { Example } from '../training/examples'
import type { GestureProfile, Spread } from './gesture-decision'
import type { MotionVector } from './scalars'

/** Mean and spread of each gesture's normalised segments, value by value. */
export function profilesOf(
  examples: readonly Example[],
  motions: readonly { gesture: number; motion: MotionVector }[],
  gestureCount: number,
): GestureProfile[] {
  return Array.from({ length: gestureCount }, (_, gesture) => gesture).flatMap((gesture) => {
    const own = examples.filter((example) => example.gesture === gesture)
    const values = own[0]?.query.length ?? 0
    if (values === 0) return []
    const columns = Array.from({ length: values }, (_, at) => own.map(({ query }) => query[at]!))
    const durations = motions.filter((one) => one.gesture === gesture)
    return [
      {
        gesture,
        takes: own.length,
        mean: columns.map((column) => round(mean(column))),
        deviation: columns.map((column) => round(standardDeviation(column) || 0)),
        durationMs: spreadOf(durations.map(({ motion }) => motion.durationMs)),
      },
    ]
  })
}

export function spreadOf(values: readonly number[]): Spread {
  return {
    low: quantile(values, 0.25),
    middle: quantile(values, 0.5),
    high: quantile(values, 0.75),
    n: values.length,
  }
}

/** Least spread of a value that counts: below, a step of the int8 would look like a wall. */
const LEAST_DEVIATION = 2

/**
 * How far two gestures stand apart, point by point and axis by axis: difference of the means in
 * standard deviations within the gestures. points × axes.
 */
export function apartBy(a: GestureProfile, b: GestureProfile): number[] {
  return a.mean.map((value, at) => {
    const within = Math.hypot(a.deviation[at]!, b.deviation[at]!) / Math.SQRT2
    return Math.abs(value - b.mean[at]!) / Math.max(LEAST_DEVIATION, within)
  })
}

function round(value: number): number {
  return Math.round(value * 10) / 10
}
