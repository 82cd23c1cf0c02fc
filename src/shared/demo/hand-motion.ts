import type { HandState } from './rigid-body'
import {
  HAND_AXES,
  type HandAxis,
  type Jet,
  minimumJerk,
  multiply,
  type Stroke,
  strokeAt,
} from './stroke'
import type { Tremor } from './tremor'

/** While laid down the hand is off the prop: no tremor. */
interface Release {
  startS: number
  endS: number
}

/** Time in which tremor fades when the prop is put down and comes back when it is taken up, s. */
const RELEASE_FADE_S = 0.3

/** A hand in motion: held pose, strokes added at any time, tremor. Time must not go backwards. */
export class HandMotion {
  /** Where the steps that are over have led, with the held pose in it. */
  readonly #settled: Record<HandAxis, number>
  readonly #tremor: Tremor | null
  #strokes: Stroke[] = []
  #releases: Release[] = []

  /** @param heldPitchDeg pitch of the handle in the held pose; @param tremor null: perfectly still. */
  constructor(heldPitchDeg: number, tremor: Tremor | null) {
    this.#settled = { x: 0, y: 0, z: 0, yaw: 0, pitch: (heldPitchDeg * Math.PI) / 180, roll: 0 }
    this.#tremor = tremor
  }

  add(strokes: readonly Stroke[]): void {
    this.#strokes.push(...strokes)
  }

  /** Lays the prop down for a while. */
  release(startS: number, endS: number): void {
    this.#releases.push({ startS, endS })
  }

  at(timeS: number): HandState {
    this.#settle(timeS)
    const state = {} as HandState
    for (const axis of HAND_AXES) state[axis] = { value: this.#settled[axis], rate: 0, accel: 0 }
    for (const stroke of this.#strokes) addTo(state[stroke.axis], strokeAt(stroke, timeS))
    if (this.#tremor) {
      const gain = this.#releases.length > 0 ? this.#tremorGain(timeS) : null
      for (const axis of HAND_AXES) {
        const tremor = this.#tremor.at(axis, timeS)
        addTo(state[axis], gain ? multiply(gain, tremor) : tremor)
      }
    }
    return state
  }

  /** Strokes that are over become part of the pose, so that a long motion stays cheap. */
  #settle(timeS: number): void {
    if (!this.#strokes.some((stroke) => stroke.startS + stroke.durationS <= timeS)) return
    this.#strokes = this.#strokes.filter((stroke) => {
      if (stroke.startS + stroke.durationS > timeS) return true
      if (stroke.kind === 'step') this.#settled[stroke.axis] += stroke.amount
      return false
    })
  }

  #tremorGain(timeS: number): Jet {
    const gain = { value: 1, rate: 0, accel: 0 }
    for (const { startS, endS } of this.#releases) {
      const off = minimumJerk(timeS - startS, RELEASE_FADE_S)
      const on = minimumJerk(timeS - endS, RELEASE_FADE_S)
      addTo(gain, {
        value: on.value - off.value,
        rate: on.rate - off.rate,
        accel: on.accel - off.accel,
      })
    }
    return gain
  }
}

function addTo(sum: Jet, part: Jet): void {
  sum.value += part.value
  sum.rate += part.rate
  sum.accel += part.accel
}
