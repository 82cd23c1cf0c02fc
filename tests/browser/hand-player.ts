import { SimulatedHand } from '../../src/shared/demo/simulated-hand'
import { AXES, type SampleBlock } from '../../src/shared/model/sample'

const RATE_HZ = 60

/** Rest, one movement of the lantern's physical model, rest: as samples to be played. */
export function performance(movementId: string, seed: number, restMs = 1100): SampleBlock {
  const hand = new SimulatedHand(seed)
  const rows: number[][] = []
  let began = false
  for (let n = 0; ; n++) {
    const tMs = (n * 1000) / RATE_HZ
    if (!began && tMs >= restMs) {
      hand.perform(movementId)
      began = true
    }
    const { ax, ay, az, gx, gy, gz } = hand.sampleAt(tMs)
    rows.push([ax, ay, az, gx, gy, gz])
    if (began && !hand.busy(tMs - restMs)) break
  }
  return blockOf(rows)
}

/** The hand at rest. */
export function stillness(durationMs: number, seed: number): SampleBlock {
  const hand = new SimulatedHand(seed)
  const count = Math.round((durationMs / 1000) * RATE_HZ)
  return blockOf(
    Array.from({ length: count }, (_, n) => {
      const { ax, ay, az, gx, gy, gz } = hand.sampleAt((n * 1000) / RATE_HZ)
      return [ax, ay, az, gx, gy, gz]
    }),
  )
}

function blockOf(rows: number[][]): SampleBlock {
  const values = new Float32Array(rows.length * AXES)
  rows.forEach((row, n) => {
    values.set(row, n * AXES)
  })
  return { tMs: Float64Array.from(rows, (_, n) => (n * 1000) / RATE_HZ), values }
}
