import { HAND_AXES, type HandAxis, type Jet } from './stroke'

/** What a pixel of pointer travel to the right or up asks of the hand: m, rad. */
const RIGHT_BY_PX: Partial<Record<HandAxis, number>> = {
  x: 0.0014,
  yaw: (-0.28 * Math.PI) / 180,
  roll: (0.04 * Math.PI) / 180,
}
const UP_BY_PX: Partial<Record<HandAxis, number>> = {
  z: 0.0013,
  y: 0.0002,
  pitch: (0.22 * Math.PI) / 180,
}

/** Natural frequency of the hand that follows the pointer, rad/s: 3.5 Hz, critically damped. */
const FOLLOW_RAD_PER_S = 2 * Math.PI * 3.5
/** The target itself is smoothed by this much, s, so that acceleration has no jumps. */
const TARGET_LAG_S = 0.025
/** Let go, the hand sinks back to the held pose so slowly that it is no movement of its own, s. */
const RETURN_S = 4
const STEP_S = 1 / 480
/** Longer silences, as when the page was hidden, are skipped: the hand is back at rest by then. */
const LONGEST_CATCH_UP_S = 2

/** A hand that follows the pointer like a mass on a damped spring. */
export class PointerDrag {
  #pendingRightPx = 0
  #pendingUpPx = 0
  #pendingS = 0
  #rightPx = 0
  #upPx = 0
  readonly #target = new Float64Array(HAND_AXES.length)
  readonly #value = new Float64Array(HAND_AXES.length)
  readonly #rate = new Float64Array(HAND_AXES.length)
  readonly #accel = new Float64Array(HAND_AXES.length)

  /** Adds pointer travel (dy grows downwards, as on screens) that took `durationS`. */
  add(dxPx: number, dyPx: number, durationS: number): void {
    this.#pendingRightPx += dxPx
    this.#pendingUpPx -= dyPx
    this.#pendingS = Math.max(this.#pendingS, durationS)
  }

  advance(byS: number): void {
    if (byS > LONGEST_CATCH_UP_S) {
      this.#forget()
      return
    }
    const steps = Math.max(1, Math.ceil(byS / STEP_S))
    for (let step = 0; step < steps; step++) this.#step(byS / steps)
  }

  /** Offset of an axis with its derivatives, m or rad. */
  at(axis: HandAxis): Jet {
    const index = HAND_AXES.indexOf(axis)
    return {
      value: this.#value[index] ?? 0,
      rate: this.#rate[index] ?? 0,
      accel: this.#accel[index] ?? 0,
    }
  }

  #forget(): void {
    this.#pendingRightPx = this.#pendingUpPx = this.#pendingS = this.#rightPx = this.#upPx = 0
    for (const state of [this.#target, this.#value, this.#rate, this.#accel]) state.fill(0)
  }

  #step(dtS: number): void {
    this.#movePointer(dtS)
    const lag = 1 - Math.exp(-dtS / TARGET_LAG_S)
    for (const [index, axis] of HAND_AXES.entries()) {
      const asked = (RIGHT_BY_PX[axis] ?? 0) * this.#rightPx + (UP_BY_PX[axis] ?? 0) * this.#upPx
      const target = (this.#target[index] ?? 0) + lag * (asked - (this.#target[index] ?? 0))
      const value = this.#value[index] ?? 0
      const rate = this.#rate[index] ?? 0
      const accel =
        FOLLOW_RAD_PER_S * FOLLOW_RAD_PER_S * (target - value) - 2 * FOLLOW_RAD_PER_S * rate
      this.#target[index] = target
      this.#accel[index] = accel
      // Semi-implicit Euler: the rate first, then the value with the new rate.
      this.#rate[index] = rate + accel * dtS
      this.#value[index] = value + (rate + accel * dtS) * dtS
    }
  }

  /** Spreads pending travel over the time it took; without any, sinks back. */
  #movePointer(dtS: number): void {
    if (this.#pendingS > 0) {
      const share = Math.min(1, dtS / this.#pendingS)
      this.#rightPx += share * this.#pendingRightPx
      this.#upPx += share * this.#pendingUpPx
      this.#pendingRightPx *= 1 - share
      this.#pendingUpPx *= 1 - share
      this.#pendingS = Math.max(0, this.#pendingS - dtS)
      return
    }
    const kept = Math.exp(-dtS / RETURN_S)
    this.#rightPx *= kept
    this.#upPx *= kept
  }
}
