import type { MotionSample } from '../sensors/motion-source'
import { AXES, type SampleBlock } from '../shared/model/sample'

/** Puts samples in rows, with times counted from `originMs` on the source's clock. */
export function toBlock(samples: readonly MotionSample[], originMs: number): SampleBlock {
  const tMs = new Float64Array(samples.length)
  const values = new Float32Array(samples.length * AXES)
  samples.forEach(({ tMs: sourceMs, ax, ay, az, gx, gy, gz }, i) => {
    tMs[i] = sourceMs - originMs
    values.set([ax, ay, az, gx, gy, gz], i * AXES)
  })
  return { tMs, values }
}
