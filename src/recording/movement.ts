import { AXES, type SampleBlock } from '../shared/model/sample'

/*
 * Is the hand moving? A coarse answer for quality words alone; where a movement starts and ends is
 * for the core's segmenter to say. A hand that tries to hold still stays below both limits.
 */
export const MOVING_DPS = 25
export const MOVING_MPS2 = 1.2
/** The acceleration is compared with that of so long before; gravity drops out. */
export const LOOK_BACK_MS = 50

export interface Movement {
  /** From the first to the last moving sample, ms; 0 when none moved. */
  durationMs: number
  /** Of the first and the last moving sample; both 0 when none moved. */
  startMs: number
  endMs: number
  fastestDps: number
  /** Largest change of acceleration within 50 ms. */
  strongestMps2: number
}

export function describeMovement({ tMs, values }: SampleBlock): Movement {
  let first = Number.NaN
  let last = Number.NaN
  let fastestDps = 0
  let strongestMps2 = 0
  let before = 0
  for (let i = 0; i < tMs.length; i++) {
    while (tMs[i]! - tMs[before]! > LOOK_BACK_MS) before++
    const rateDps = length3(values, i * AXES + 3)
    const changeMps2 = distance3(values, i * AXES, before * AXES)
    fastestDps = Math.max(fastestDps, rateDps)
    strongestMps2 = Math.max(strongestMps2, changeMps2)
    if (rateDps < MOVING_DPS && changeMps2 < MOVING_MPS2) continue
    if (Number.isNaN(first)) first = tMs[i]!
    last = tMs[i]!
  }
  const [startMs, endMs] = Number.isNaN(first) ? [0, 0] : [first, last]
  return { durationMs: endMs - startMs, startMs, endMs, fastestDps, strongestMps2 }
}

function length3(values: Float32Array, at: number): number {
  return Math.hypot(values[at]!, values[at + 1]!, values[at + 2]!)
}

function distance3(values: Float32Array, at: number, other: number): number {
  return Math.hypot(
    values[at]! - values[other]!,
    values[at + 1]! - values[other + 1]!,
    values[at + 2]! - values[other + 2]!,
  )
}
