import type { Rate } from '../model/evaluation'
import { clusteredRate } from '../statistics/clustered'
import { median } from '../statistics/summary'

/** What normalising takes away from a movement. Sizes: centred rms over the axes, counts and deg/s. */
export interface MotionVector {
  durationMs: number
  accelSize: number
  gyroSize: number
  /** Rotation on the way, rate times duration: what speed leaves and size changes. */
  turn: number
}

/** A value of one take. */
export interface Valued {
  gesture: number
  tester: string
  value: number
}

/**
 * How often one number tells two gestures apart: each take is given to the gesture whose median over
 * the other testers is nearer in ratio (over the other takes where there is one tester).
 */
export function toldByValue(values: readonly Valued[], first: number, second: number): Rate {
  const own = values.filter(({ gesture }) => gesture === first || gesture === second)
  const testers = [...new Set(own.map(({ tester }) => tester))].sort()
  const alone = testers.length < 2
  const clusters = testers.map((tester) => {
    const held = own.filter((one) => one.tester === tester)
    const hits = held.filter((one) => {
      const others = own.filter((other) => (alone ? other !== one : other.tester !== tester))
      const to = (gesture: number) => Math.abs(Math.log(one.value) - middle(others, gesture))
      const [a, b] = [to(first), to(second)]
      return one.gesture === first ? a < b : b < a
    }).length
    return { hits, n: held.length }
  })
  return clusteredRate(clusters)
}

function middle(values: readonly Valued[], gesture: number): number {
  const own = values.filter((one) => one.gesture === gesture)
  return own.length === 0
    ? Number.POSITIVE_INFINITY
    : median(own.map(({ value }) => Math.log(Math.max(value, 1e-9))))
}
