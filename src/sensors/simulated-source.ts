import { DEMO_MOVEMENTS } from '../shared/demo/movements'
import { SimulatedHand } from '../shared/demo/simulated-hand'
import { drawTesterStyle } from '../shared/demo/tester-style'
import { createRandom } from '../shared/statistics/random'
import { MotionMeter } from './motion-meter'
import type { MotionFacts, MotionSource, MotionStatus } from './motion-source'
import { SourceHub } from './source-hub'

/** What browsers deliver on phones is 60 Hz. */
const TICK_MS = 1000 / 60
/** After a longer pause of the page the readings in between are lost, as on a phone. */
const CATCH_UP_MS = 500
/** Pointer moves farther apart are the start of a new drag. */
const DRAG_PAUSE_MS = 100

/** The simulated phone: the same as a phone to every screen, and moved from the screen. */
export interface SimulatedSource extends MotionSource {
  readonly kind: 'simulated'
  /** What the hand can perform. */
  movements(): { id: string; name: string }[]
  /** Performs a movement once, starting now, a little different each time. */
  perform(movementId: string): void
  /** Whether a movement asked for is under way or waiting. */
  busy(): boolean
  /** Moves the hand with a pointer, in CSS pixels since the last call. */
  drag(dxPx: number, dyPx: number): void
  /** Another person takes the phone: other speed, size and grip. Same number, same person. */
  setTester(index: number): void
}

/** @param seed same seed, same performances in the same order; a new one each time by default. */
export function createSimulatedSource(seed = Date.now() % 2 ** 31): SimulatedSource {
  return new Simulation(seed)
}

class Simulation implements SimulatedSource {
  readonly kind = 'simulated'
  readonly #hub = new SourceHub()
  readonly #seed: number
  #meter = new MotionMeter()
  #hand: SimulatedHand
  #timer: ReturnType<typeof setInterval> | null = null
  /** Clock of the page at which the hand's time was zero. */
  #originMs = 0
  #nextTick = 0
  #lastDragMs = 0

  constructor(seed: number) {
    this.#seed = seed
    this.#hand = new SimulatedHand(seed)
  }

  async start(): Promise<MotionStatus> {
    if (this.#timer !== null) return this.#hub.status
    this.#meter = new MotionMeter()
    this.#originMs = performance.now() - this.#nextTick * TICK_MS
    this.#timer = setInterval(this.#onTimer, TICK_MS)
    this.#hub.setStatus('running')
    return 'running'
  }

  stop(): void {
    if (this.#timer !== null) clearInterval(this.#timer)
    this.#timer = null
    this.#hub.setStatus('stopped')
  }

  status(): MotionStatus {
    return this.#hub.status
  }

  facts(): MotionFacts {
    return { ...this.#meter.facts(), simulated: true, accelSign: 1 }
  }

  /** The simulated phone keeps to W3C axes; there is nothing to find out. */
  setAccelSign(): void {}

  subscribe: MotionSource['subscribe'] = (onSample) => this.#hub.subscribe(onSample)
  onStatus: MotionSource['onStatus'] = (onChange) => this.#hub.onStatus(onChange)

  movements(): { id: string; name: string }[] {
    return DEMO_MOVEMENTS.map(({ id, name }) => ({ id, name }))
  }

  perform(movementId: string): void {
    this.#hand.perform(movementId)
  }

  busy(): boolean {
    return this.#hand.busy(this.#nextTick * TICK_MS)
  }

  drag(dxPx: number, dyPx: number): void {
    const nowMs = performance.now()
    this.#hand.drag(dxPx, dyPx, Math.min(nowMs - this.#lastDragMs, DRAG_PAUSE_MS))
    this.#lastDragMs = nowMs
  }

  setTester(index: number): void {
    const style = drawTesterStyle(index, createRandom(index))
    this.#hand = new SimulatedHand(this.#seed + index, { style })
  }

  readonly #onTimer = (): void => {
    const dueTick = Math.floor((performance.now() - this.#originMs) / TICK_MS)
    if ((dueTick - this.#nextTick) * TICK_MS > CATCH_UP_MS) this.#nextTick = dueTick
    for (; this.#nextTick <= dueTick; this.#nextTick++) {
      const handMs = this.#nextTick * TICK_MS
      const sample = { tMs: this.#originMs + handMs, ...this.#hand.sampleAt(handMs) }
      this.#meter.add({ sample, hasGyro: true })
      this.#hub.emit(sample)
    }
  }
}
