import type { SampleBlock } from '../model/sample'
import { mean, standardDeviation } from '../statistics/summary'

/**
 * A window is still when the length of the acceleration spreads by no more than this (sample
 * standard deviation) and the turning rate stays below the next on average. A hand that holds a prop
 * still trembles below both. A phone's step of 0.1 m/s² alone spreads 0.05.
 */
export const STILL_ACCEL_SPREAD_MPS2 = 0.25
export const STILL_RATE_DPS = 12

/** Shortest stretch that can be called still. */
export const STILL_WINDOW_MS = 200

/** Samples from..to, the end not included. */
export interface Stretch {
  from: number
  to: number
}

function lengths(block: SampleBlock, from: number, to: number, sensor: 0 | 3): Float64Array {
  return Float64Array.from({ length: to - from }, (_, k) => {
    const i = 6 * (from + k) + sensor
    return Math.hypot(block.values[i]!, block.values[i + 1]!, block.values[i + 2]!)
  })
}

/** Whether the prop hardly moved in samples from..to; fewer than three samples are never still. */
export function isStill(block: SampleBlock, from: number, to: number): boolean {
  if (to - from < 3) return false
  return (
    standardDeviation(lengths(block, from, to, 0)) <= STILL_ACCEL_SPREAD_MPS2 &&
    mean(lengths(block, from, to, 3)) <= STILL_RATE_DPS
  )
}

/** Stretches made of still windows of STILL_WINDOW_MS, in order; they do not overlap. */
export function stillStretches(block: SampleBlock): Stretch[] {
  const found: Stretch[] = []
  let to = 0
  for (let from = 0; from < block.tMs.length; from++) {
    while (to < block.tMs.length && block.tMs[to]! - block.tMs[from]! < STILL_WINDOW_MS) to++
    if (to === block.tMs.length) break
    if (!isStill(block, from, to + 1)) continue
    const last = found.at(-1)
    if (last !== undefined && from <= last.to) last.to = to + 1
    else found.push({ from, to: to + 1 })
  }
  return found
}
