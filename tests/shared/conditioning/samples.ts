import type { SampleBlock } from '../../../src/shared/model/sample'

type Six = [number, number, number, number, number, number]

/** Samples of a motion given as a function of seconds, at the times given. */
export function sampled(tMs: number[], motion: (seconds: number) => Six): SampleBlock {
  const values = new Float32Array(6 * tMs.length)
  for (const [i, t] of tMs.entries()) values.set(motion(t / 1000), 6 * i)
  return { tMs: Float64Array.from(tMs), values }
}

export function evenTimes(rateHz: number, seconds: number, startMs = 0): number[] {
  const count = Math.floor(rateHz * seconds) + 1
  return Array.from({ length: count }, (_, i) => startMs + (i * 1000) / rateHz)
}

export function rows(block: SampleBlock, from: number, to: number): SampleBlock {
  return { tMs: block.tMs.slice(from, to), values: block.values.slice(6 * from, 6 * to) }
}

export function axisOf(counts: Int16Array, axis: number): number[] {
  return Array.from({ length: counts.length / 6 }, (_, i) => counts[6 * i + axis]!)
}
