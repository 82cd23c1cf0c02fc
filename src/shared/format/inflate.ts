import { Inflate } from 'fflate'

/** Packed bytes given to the inflater at a time: deflate grows them at most 1,032-fold. */
const STEP = 4096

/** The inflated bytes, or null when there are not exactly `size` of them. Stops at the first more. */
export function inflateExactly(packed: Uint8Array, size: number): Uint8Array | null {
  const out = new Uint8Array(size)
  let written = 0
  const inflater = new Inflate((chunk) => {
    if (written + chunk.length <= size) out.set(chunk, written)
    written += chunk.length
  })
  try {
    for (let at = 0; at < packed.length && written <= size; at += STEP) {
      inflater.push(packed.subarray(at, at + STEP), at + STEP >= packed.length)
    }
  } catch {
    return null
  }
  return written === size ? out : null
}
