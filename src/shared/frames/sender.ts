import { sha256Hex } from '../format/sha256'
import { fail, ok, type Result } from '../model/result'
import { CODE_TROUBLE } from '../words/en/code-trouble'
import { MAX_BLOCKS, MAX_CONTENT_BYTES, writeFrame } from './frame'
import { has, mixOf, xorInto } from './mix'

/** Content as an endless run of codes: its blocks in order, then mixes of them. */
export interface FrameSender {
  /** Frames a receiver needs at least. */
  blocks: number
  /** Text of frame `number`, 0 and up. */
  text(number: number): string
}

/** Codes: 'frames/empty', 'frames/too-large'. */
export function createSender(content: Uint8Array, blockBytes: number): Result<FrameSender> {
  if (content.length === 0) return fail('frames/empty', CODE_TROUBLE.nothing)
  const blocks = Math.ceil(content.length / blockBytes)
  if (content.length > MAX_CONTENT_BYTES || blocks > MAX_BLOCKS) {
    return fail('frames/too-large', CODE_TROUBLE.tooMuch(content.length))
  }
  const padded = new Uint8Array(blocks * blockBytes)
  padded.set(content)
  const stream = streamOf(content)
  const block = (index: number) => padded.subarray(index * blockBytes, (index + 1) * blockBytes)
  return ok({
    blocks,
    text(number) {
      const mix = mixOf(number, blocks)
      const data = new Uint8Array(blockBytes)
      for (let index = 0; index < blocks; index++) if (has(mix, index)) xorInto(data, block(index))
      return writeFrame({ stream, contentBytes: content.length, blockBytes, number, data })
    },
  })
}

/** Name of a run: what its content hashes to. */
export function streamOf(content: Uint8Array): number {
  return Number.parseInt(sha256Hex(content).slice(0, 8), 16)
}
