import { crc32 } from '../format/crc32'
import { fromBase45, toBase45 } from './base45'

/** What a code of a run begins with, so that any other code is told apart. */
const MARK = 'MWF1:'
const HEAD_BYTES = 14
const CRC_BYTES = 4

/** More than a QR code holds, or than anybody waits for, is no frame of ours. */
export const MAX_BLOCK_BYTES = 2048
export const MAX_CONTENT_BYTES = 1024 * 1024
/** So that finding the blocks stays a matter of milliseconds. */
export const MAX_BLOCKS = 1024

/**
 * One picture of a run: a block of the content, or several blocks put together by XOR. Each stands
 * alone, so that pictures may be seen in any order, twice or not at all.
 */
export interface Frame {
  /** First 32 bits of the content's SHA-256: which run it belongs to, and the check at the end. */
  stream: number
  contentBytes: number
  /** Content is cut into blocks of this size, the last one filled up with zeros. */
  blockBytes: number
  /** Below the count of blocks: that block. From there on: the blocks of `mixOf`. */
  number: number
  data: Uint8Array
}

export function blockCount({ contentBytes, blockBytes }: Frame): number {
  return Math.ceil(contentBytes / blockBytes)
}

/** Characters of a code with blocks of this size. */
export function frameLength(blockBytes: number): number {
  const bytes = HEAD_BYTES + blockBytes + CRC_BYTES
  return MARK.length + 3 * Math.floor(bytes / 2) + (bytes % 2 === 1 ? 2 : 0)
}

export function writeFrame(frame: Frame): string {
  const bytes = new Uint8Array(HEAD_BYTES + frame.data.length + CRC_BYTES)
  const view = new DataView(bytes.buffer)
  view.setUint32(0, frame.stream)
  view.setUint32(4, frame.contentBytes)
  view.setUint16(8, frame.blockBytes)
  view.setUint32(10, frame.number)
  bytes.set(frame.data, HEAD_BYTES)
  view.setUint32(bytes.length - CRC_BYTES, crc32(bytes.subarray(0, -CRC_BYTES)))
  return MARK + toBase45(bytes)
}

/** Null for a code that is no frame, or a damaged one. */
export function readFrame(text: string): Frame | null {
  if (!text.startsWith(MARK)) return null
  const bytes = fromBase45(text.slice(MARK.length))
  if (bytes === null || bytes.length <= HEAD_BYTES + CRC_BYTES) return null
  const view = new DataView(bytes.buffer)
  if (view.getUint32(bytes.length - CRC_BYTES) !== crc32(bytes.subarray(0, -CRC_BYTES))) return null
  const frame: Frame = {
    stream: view.getUint32(0),
    contentBytes: view.getUint32(4),
    blockBytes: view.getUint16(8),
    number: view.getUint32(10),
    data: bytes.slice(HEAD_BYTES, -CRC_BYTES),
  }
  return isSound(frame) ? frame : null
}

function isSound(frame: Frame): boolean {
  const { contentBytes, blockBytes, data } = frame
  return (
    data.length === blockBytes &&
    blockBytes <= MAX_BLOCK_BYTES &&
    contentBytes > 0 &&
    contentBytes <= MAX_CONTENT_BYTES &&
    blockCount(frame) <= MAX_BLOCKS
  )
}
