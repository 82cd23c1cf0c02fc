import type { Library } from '../model/library'
import type { Plan } from './plan'

/**
 * A stored plan as its library stands now: under its name, with its gestures, by their names, and with
 * the ranges of its target.
 */
export function currentPlan(plan: Plan, { name, gestures, target }: Library): Plan {
  const names = new Map(gestures.map((gesture) => [gesture.id, gesture.name]))
  return {
    ...plan,
    title: name,
    ranges: { accel: target.accel, gyro: target.gyro },
    gestures: plan.gestures.flatMap((one) => {
      const now = names.get(one.gestureId)
      return now === undefined ? [] : [{ ...one, name: now }]
    }),
  }
}
