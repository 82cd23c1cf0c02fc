import { createRandom, type Random } from '../statistics/random'
import { HandMotion } from './hand-motion'
import { DEMO_MOVEMENTS, demoMovement, performMovement } from './movements'
import {
  drawPhoneSensor,
  idealReading,
  PERFECT_SENSOR,
  type PhoneSensor,
  phoneReading,
} from './phone-sensor'
import { PointerDrag } from './pointer-drag'
import { lanternIn } from './prop'
import { type Grip, type HandState, type SensorPlace, senseMotion } from './rigid-body'
import { HAND_AXES, lastEndS, shifted } from './stroke'
import { drawTesterStyle, type TesterStyle } from './tester-style'
import { Tremor } from './tremor'

/** One reading in the phone's axes: m/s² with gravity included, deg/s. */
export interface HandReading {
  ax: number
  ay: number
  az: number
  gx: number
  gy: number
  gz: number
}

export interface SimulatedHandOptions {
  /** Whose hand it is; by default one drawn from the seed like the demo's first tester. */
  style?: TesterStyle
  /** Roll of the grip, deg, in place of the style's. */
  gripRollDeg?: number
  /** No tremor, noise, bias or rounding: what an ideal sensor in a steady hand would read. */
  ideal?: boolean
}

/** Rest between movements that were asked for in a row, s: long enough to end the first. */
const REST_BETWEEN_S = 0.7

/**
 * A hand with a phone in it, made of the same movements as the demo library. Time is whatever the
 * caller gives to sampleAt, ms, and must not go backwards; the first call sets the start.
 */
export class SimulatedHand {
  /** What perform() knows. */
  readonly movements: readonly { id: string; name: string }[] = DEMO_MOVEMENTS.map(
    ({ id, name }) => ({ id, name }),
  )
  readonly style: TesterStyle
  readonly #random: Random
  readonly #noise: Random
  readonly #hand: HandMotion
  readonly #drag = new PointerDrag()
  readonly #sensor: PhoneSensor
  readonly #ideal: boolean
  #place: SensorPlace
  #startMs: number | null = null
  #nowS = 0
  #busyUntilS = 0

  constructor(seed: number, options: SimulatedHandOptions = {}) {
    this.#random = createRandom(seed)
    this.#noise = this.#random.fork()
    this.#ideal = options.ideal ?? false
    this.style = options.style ?? drawTesterStyle(0, this.#random.fork())
    const sensor = drawPhoneSensor(this.#random.fork())
    this.#sensor = this.#ideal ? PERFECT_SENSOR : sensor
    const tremor = new Tremor(this.style.tremor, this.#random.fork())
    this.#hand = new HandMotion(this.style.heldPitchDeg, this.#ideal ? null : tremor)
    this.#place = lanternIn(this.style)
    if (options.gripRollDeg !== undefined) this.setGrip({ rollDeg: options.gripRollDeg })
  }

  /** Holds the prop in another way from the next reading on; what is not given stays. */
  setGrip(grip: Partial<Grip>): void {
    this.#place = { ...this.#place, grip: { ...this.#place.grip, ...grip } }
  }

  /**
   * Starts a movement at once, or after a short rest when another is under way. Each performance
   * differs a little. Ids other than those in `movements` are a mistake of the caller.
   */
  perform(movementId: string): void {
    const movement = demoMovement(movementId)
    if (!movement) throw new RangeError(`No movement is called "${movementId}".`)
    const queued = this.#busyUntilS > this.#nowS
    const startS = queued ? this.#busyUntilS + REST_BETWEEN_S : this.#nowS
    const strokes = shifted(performMovement(movement, this.style, this.#random), startS)
    this.#hand.add(strokes)
    this.#busyUntilS = lastEndS(strokes)
  }

  /**
   * Moves and turns the lantern with the pointer: right and left carry it sideways, up and down
   * lift it (dyPx grows downwards). dtMs: time the travel took.
   */
  drag(dxPx: number, dyPx: number, dtMs: number): void {
    this.#drag.add(dxPx, dyPx, Math.max(1, dtMs) / 1000)
  }

  /** Whether a movement asked for by perform() is under way or waiting at this time. */
  busy(tMs: number): boolean {
    return this.#seconds(tMs) < this.#busyUntilS
  }

  /** Where hand and prop are and how they move, at the time of the last reading. */
  stateAt(tMs: number): HandState {
    const timeS = Math.max(this.#nowS, this.#seconds(tMs))
    this.#drag.advance(timeS - this.#nowS)
    this.#nowS = timeS
    const state = this.#hand.at(timeS)
    for (const axis of HAND_AXES) {
      const offset = this.#drag.at(axis)
      const jet = state[axis]
      jet.value += offset.value
      jet.rate += offset.rate
      jet.accel += offset.accel
    }
    return state
  }

  /** The sensor's reading at a time, as a phone gives it unless the hand is ideal. */
  sampleAt(tMs: number): HandReading {
    if (this.#startMs === null) this.#startMs = tMs
    const motion = senseMotion(this.stateAt(tMs), this.#place)
    const reading = this.#ideal
      ? idealReading(motion)
      : phoneReading(motion, this.#sensor, this.#noise)
    const [ax = 0, ay = 0, az = 0, gx = 0, gy = 0, gz = 0] = reading
    return { ax, ay, az, gx, gy, gz }
  }

  #seconds(tMs: number): number {
    return this.#startMs === null ? 0 : (tMs - this.#startMs) / 1000
  }
}
