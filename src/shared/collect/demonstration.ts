import type { AccelSign, Trim } from '../model/library'
import { AXES, type SampleBlock, STANDARD_GRAVITY_MPS2, sampleCount } from '../model/sample'
import type { Demonstration } from './plan'

const ACCEL_STEP_MPS2 = 0.5
const GYRO_STEP_DPS = 16
const LARGEST = 127

/** Above either a hand moves; below both it rests. Only what is shown depends on it. */
const MOVING_DPS = 40
const MOVING_MPS2 = 2
/** Rest that is shown before and after. */
const REST_SHOWN_MS = 200

/** Longest movement that is shown; what is beyond is cut off. */
export const MAX_DEMONSTRATION_MS = 8_000

/**
 * A take thinned to means over even periods. Means, because the angle turned in a period is the mean
 * rate times its length, so that the shown attitude keeps up whatever the period.
 * @param periodMs whole, 20 to 500
 * @param trim the part that counts; without it, rest at either end is left out
 * @returns null when there is too little to show
 */
export function demonstrate(
  samples: SampleBlock,
  accelSign: AccelSign,
  periodMs: number,
  trim: Trim | null = null,
): Demonstration | null {
  const count = sampleCount(samples)
  const part = trim ?? movingPart(samples)
  const start = part.startMs
  const lengthMs = Math.min(part.endMs - start, MAX_DEMONSTRATION_MS)
  const periods = Math.floor(lengthMs / periodMs)
  if (periods < 2) return null
  const values: number[] = []
  let row = 0
  while (row < count - 1 && samples.tMs[row]! < start) row++
  let before = Array.from(samples.values.subarray(row * AXES, (row + 1) * AXES))
  for (let period = 0; period < periods; period++) {
    const end = start + (period + 1) * periodMs
    const from = row
    while (row < count && samples.tMs[row]! < end) row++
    // A hole in the samples holds the reading before it.
    if (row > from) before = meanOf(samples, from, row)
    values.push(...before.map((value, axis) => toStep(value, axis, accelSign)))
  }
  return { periodMs, values }
}

/** Samples to show it by: W3C sign, one a period. */
export function demonstrationSamples({ periodMs, values }: Demonstration): SampleBlock {
  const count = Math.floor(values.length / AXES)
  return {
    tMs: Float64Array.from({ length: count }, (_, n) => n * periodMs),
    values: Float32Array.from({ length: count * AXES }, (_, i) => values[i]! * stepOf(i % AXES)),
  }
}

/** From a little before the first movement to a little after the last. */
function movingPart({ tMs, values }: SampleBlock): Trim {
  const moves = (row: number) => {
    const [ax, ay, az, gx, gy, gz] = values.subarray(row * AXES, (row + 1) * AXES)
    const excess = Math.abs(Math.hypot(ax!, ay!, az!) - STANDARD_GRAVITY_MPS2)
    return Math.hypot(gx!, gy!, gz!) > MOVING_DPS || excess > MOVING_MPS2
  }
  const rows = Array.from(tMs, (_, row) => row).filter(moves)
  const [first = tMs[0] ?? 0, last = tMs.at(-1) ?? 0] = [tMs[rows[0] ?? 0], tMs[rows.at(-1) ?? 0]]
  if (rows.length === 0) return { startMs: tMs[0] ?? 0, endMs: tMs.at(-1) ?? 0 }
  return {
    startMs: Math.max(tMs[0] ?? 0, first - REST_SHOWN_MS),
    endMs: Math.min(tMs.at(-1) ?? 0, last + REST_SHOWN_MS),
  }
}

function meanOf({ values }: SampleBlock, from: number, to: number): number[] {
  return Array.from({ length: AXES }, (_, axis) => {
    let sum = 0
    for (let row = from; row < to; row++) sum += values[row * AXES + axis]!
    return sum / (to - from)
  })
}

function toStep(value: number, axis: number, accelSign: AccelSign): number {
  const sign = axis < 3 && accelSign === -1 ? -1 : 1
  const step = Math.round((sign * value) / stepOf(axis))
  return Math.max(-LARGEST, Math.min(LARGEST, step)) + 0
}

function stepOf(axis: number): number {
  return axis < 3 ? ACCEL_STEP_MPS2 : GYRO_STEP_DPS
}
