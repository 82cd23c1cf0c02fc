import { sha256Hex } from '../format/sha256'
import { AXES, type SampleBlock, sampleCount } from '../model/sample'

const DOMAIN = 'movewright samples 1\n'
const BYTES_PER_SAMPLE = 8 + 4 * AXES

/**
 * Identity of a recording by what was measured: SHA-256, hex, over times and readings, bit for bit.
 * Hand, labels and who recorded it do not count, so that every copy of it has the same.
 */
export function contentId(samples: SampleBlock): string {
  const count = sampleCount(samples)
  const bytes = new Uint8Array(DOMAIN.length + count * BYTES_PER_SAMPLE)
  for (let i = 0; i < DOMAIN.length; i++) bytes[i] = DOMAIN.charCodeAt(i)
  const view = new DataView(bytes.buffer, DOMAIN.length)
  for (let n = 0; n < count; n++) {
    const at = n * BYTES_PER_SAMPLE
    view.setFloat64(at, samples.tMs[n]!, true)
    for (let axis = 0; axis < AXES; axis++) {
      view.setFloat32(at + 8 + 4 * axis, samples.values[n * AXES + axis]!, true)
    }
  }
  return sha256Hex(bytes)
}
