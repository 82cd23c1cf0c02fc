import { AXES, type SampleBlock } from '../shared/model/sample'

/** Joins blocks in the order given into one that shares no memory with them. */
export function joinBlocks(blocks: readonly SampleBlock[]): SampleBlock {
  const count = blocks.reduce((sum, block) => sum + block.tMs.length, 0)
  const joined = { tMs: new Float64Array(count), values: new Float32Array(count * AXES) }
  let at = 0
  for (const block of blocks) {
    joined.tMs.set(block.tMs, at)
    joined.values.set(block.values, at * AXES)
    at += block.tMs.length
  }
  return joined
}

/**
 * The same samples in memory of their own: storing a view of a large buffer would store the whole
 * buffer with it.
 */
export function compact(block: SampleBlock): SampleBlock {
  return {
    tMs: ownsMemory(block.tMs) ? block.tMs : block.tMs.slice(),
    values: ownsMemory(block.values) ? block.values : block.values.slice(),
  }
}

function ownsMemory(array: Float64Array | Float32Array): boolean {
  return array.byteLength === array.buffer.byteLength
}

export function durationMs(block: SampleBlock): number {
  const count = block.tMs.length
  return count === 0 ? 0 : block.tMs[count - 1]! - block.tMs[0]!
}
