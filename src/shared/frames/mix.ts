import { createRandom } from '../statistics/random'

/**
 * Blocks that frame `number` puts together, as bits: block b is bit b % 32 of word b / 32. Frames below
 * the count are single blocks. Each of the others takes every block with probability 1/2, drawn from
 * its number: the random linear fountain (MacKay, "Fountain codes", IEE Proc.-Commun. 152, 2005, 2.1).
 * With E frames more than blocks all are found but for a chance of less than 2^-E; no soliton is
 * needed, as there are few enough blocks to solve for.
 */
export function mixOf(number: number, blocks: number): Uint32Array {
  const words = new Uint32Array(Math.ceil(blocks / 32))
  if (number < blocks) {
    words[number >>> 5] = 1 << (number & 31)
    return words
  }
  const random = createRandom(number)
  for (let at = 0; at < words.length; at++) words[at] = random.nextUint32()
  const used = blocks & 31
  if (used !== 0) words[words.length - 1]! &= 2 ** used - 1
  // All zero would carry nothing: with one block a chance of one in two.
  if (words.every((word) => word === 0)) words[0] = 1
  return words
}

export function has(mix: Uint32Array, block: number): boolean {
  return ((mix[block >>> 5]! >>> (block & 31)) & 1) === 1
}

/** Adds over GF(2), in place. */
export function xorInto(to: Uint8Array | Uint32Array, from: Uint8Array | Uint32Array): void {
  for (let at = 0; at < to.length; at++) to[at]! ^= from[at]!
}
