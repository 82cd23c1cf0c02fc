import type { AccelSign } from '../model/library'
import { AXES, type SampleBlock, sampleCount } from '../model/sample'
import type { Demonstration } from './plan'

const ACCEL_STEP_MPS2 = 0.5
const GYRO_STEP_DPS = 16
const LARGEST = 127

/** Longest movement that is shown; what is beyond is cut off. */
export const MAX_DEMONSTRATION_MS = 8_000

/**
 * A take thinned to means over even periods. Means, because the angle turned in a period is the mean
 * rate times its length, so that the shown attitude keeps up whatever the period.
 * @param periodMs whole, 20 to 500
 * @returns null when there is too little to show
 */
export function demonstrate(
  samples: SampleBlock,
  accelSign: AccelSign,
  periodMs: number,
): Demonstration | null {
  const count = sampleCount(samples)
  const start = samples.tMs[0] ?? 0
  const lengthMs = Math.min((samples.tMs[count - 1] ?? 0) - start, MAX_DEMONSTRATION_MS)
  const periods = Math.floor(lengthMs / periodMs)
  if (periods < 2) return null
  const values: number[] = []
  let row = 0
  let before = Array.from(samples.values.subarray(0, AXES))
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
