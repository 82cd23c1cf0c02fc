import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { contentId } from '../../../src/shared/collect/content-id'
import { awkwardBlock } from '../format/sample-library'

test('a content id is the SHA-256 that OpenSSL gives for the bytes of FORMAT.md', () => {
  const block = awkwardBlock(7)
  const hash = createHash('sha256').update('movewright samples 1\n')
  for (let n = 0; n < 7; n++) {
    const row = Buffer.alloc(32)
    row.writeDoubleLE(block.tMs[n]!, 0)
    for (let axis = 0; axis < 6; axis++) row.writeFloatLE(block.values[n * 6 + axis]!, 8 + 4 * axis)
    hash.update(row)
  }
  expect(contentId(block)).toBe(hash.digest('hex'))
})

test('one bit of one reading or time makes another content id', () => {
  const ids = [0, 1, 2].map((change) => {
    const block = awkwardBlock(3)
    if (change === 1) block.values[7] = 1e-45
    if (change === 2) block.tMs[2] = block.tMs[2]! + 1e-9
    return contentId(block)
  })
  expect(new Set(ids).size).toBe(3)
})
