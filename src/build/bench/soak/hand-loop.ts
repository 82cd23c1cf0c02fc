import { DEMO_MOVEMENTS } from '../../../shared/demo/movements'
import { SimulatedHand } from '../../../shared/demo/simulated-hand'

export const RATE_HZ = 60
const TICK_MS = 1000 / RATE_HZ
const REST_MS = 1500
/** Browsers give readings in steps of 0.1. */
const STEPS = 10

/**
 * A hand that makes every movement of the demo with rests between: readings of a phone at 60 Hz, six
 * values each, to be played over and over.
 */
export function handLoop(seed: number): Float32Array {
  const hand = new SimulatedHand(seed)
  const values: number[] = []
  let tick = 0
  const read = () => {
    const atMs = tick * TICK_MS
    const { ax, ay, az, gx, gy, gz } = hand.sampleAt(atMs)
    values.push(...[ax, ay, az, gx, gy, gz].map((value) => Math.round(value * STEPS) / STEPS))
    tick += 1
  }
  const rest = () => {
    for (const end = tick + (REST_MS / 1000) * RATE_HZ; tick < end; ) read()
  }
  for (const { id } of DEMO_MOVEMENTS) {
    rest()
    hand.perform(id)
    do read()
    while (hand.busy(tick * TICK_MS))
  }
  rest()
  return Float32Array.from(values)
}
