import type { Random } from '../statistics/random'
import { HAND_AXES, type HandAxis, type Jet, sine } from './stroke'

interface Component {
  amount: number
  frequencyHz: number
  phase: number
}

/**
 * What a hand does that wants to be still: fast tremor at 8 to 12 Hz and slow sway below 1 Hz, as
 * sums of sines, so that derivatives are exact. Sizes are set to look like a phone held freely
 * (tenths of m/s², one or two deg/s); they are not taken from a published measurement.
 */
export class Tremor {
  readonly #components: Record<HandAxis, Component[]>

  /** @param factor 1 for the average tester. */
  constructor(factor: number, random: Random) {
    const entries = HAND_AXES.map((axis) => {
      const turns = axis === 'yaw' || axis === 'pitch' || axis === 'roll'
      const fast = [8.3, 9.7, 11.2].map((centreHz) => {
        const frequencyHz = centreHz + random.uniform(-0.6, 0.6)
        const angularRate = 2 * Math.PI * frequencyHz
        // Peak 0.9 deg/s of rate, or 0.05 m/s² of acceleration, for each component.
        const peak = turns ? (0.9 * Math.PI) / 180 / angularRate : 0.05 / angularRate ** 2
        return component(peak * factor * random.uniform(0.5, 1.2), frequencyHz, random)
      })
      const slow = [0.22, 0.7].map((centreHz) => {
        const frequencyHz = centreHz * random.uniform(0.8, 1.25)
        const peak = turns ? (0.5 * Math.PI) / 180 : 0.002
        return component(
          (peak * factor * random.uniform(0.5, 1.2)) / (centreHz + 0.5),
          frequencyHz,
          random,
        )
      })
      return [axis, [...fast, ...slow]] as const
    })
    this.#components = Object.fromEntries(entries) as Record<HandAxis, Component[]>
  }

  at(axis: HandAxis, timeS: number): Jet {
    const sum = { value: 0, rate: 0, accel: 0 }
    for (const { amount, frequencyHz, phase } of this.#components[axis]) {
      const unit = sine(timeS, frequencyHz, phase)
      sum.value += amount * unit.value
      sum.rate += amount * unit.rate
      sum.accel += amount * unit.accel
    }
    return sum
  }
}

function component(amount: number, frequencyHz: number, random: Random): Component {
  return { amount, frequencyHz, phase: random.uniform(0, 2 * Math.PI) }
}
