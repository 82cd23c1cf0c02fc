import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { sha256Hex } from '../../../src/shared/format/sha256'
import { createRandom } from '../../../src/shared/statistics/random'

describe('SHA-256', () => {
  it.each([
    // FIPS 180-2, appendix B, one and two blocks.
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('gives the published digest of %s', (text, digest) => {
    expect(sha256Hex(new TextEncoder().encode(text))).toBe(digest)
  })

  it('agrees with OpenSSL at every length about the block edges', () => {
    const random = createRandom(5)
    for (const length of [0, 1, 54, 55, 56, 57, 63, 64, 65, 119, 120, 128, 1000]) {
      const bytes = Uint8Array.from({ length }, () => random.integer(256))
      expect(sha256Hex(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'))
    }
  })
})
