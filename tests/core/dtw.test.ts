import DynamicTimeWarping from 'dynamic-time-warping'
import { beforeAll, describe, expect, it } from 'vitest'
import { loadCoreForNode } from '../../src/build/load-core'
import type { WasmCore } from '../../src/shared/core/create-core'
import { createRandom } from '../../src/shared/statistics/random'

const ABSOLUTE = 0
const SQUARED = 1
const WIDE = 127

let core: WasmCore
beforeAll(async () => {
  core = await loadCoreForNode()
})

function dtw(a: number[], b: number[], cost: 0 | 1, band = WIDE, channels = 1): number {
  return core.dtw(Int8Array.from(a), Int8Array.from(b), { channels, band, cost })
}

describe('worked examples of dynamic time warping', () => {
  // Müller, Fundamentals of Music Processing, Springer 2015, chapter 3; also librosa tests/test_dtw.py.
  const x = [1, 3, 3, 8, 1]
  const y = [2, 0, 0, 8, 7, 2]
  it("gives Müller's distance of 9 with absolute cost", () => {
    expect(dtw(x, y, ABSOLUTE)).toBe(9)
  })
  it('gives 21 on the same series with squared cost, as the npm package dtw does', () => {
    expect(dtw(x, y, SQUARED)).toBe(21)
  })
  it('still gives 9 within a band of one cell (computed from the definition)', () => {
    expect(dtw(x, y, ABSOLUTE, 1)).toBe(9)
  })
  it('finds no path when the lengths differ by more than the band', () => {
    expect(dtw(x, y, ABSOLUTE, 0)).toBe(Number.POSITIVE_INFINITY)
  })

  // dtaidistance documentation: distance is the root of the squared sum, so its square is checked.
  const s1 = [0, 0, 1, 2, 1, 0, 1, 0, 0]
  const s2 = [0, 1, 2, 0, 0, 0, 0, 0, 0]
  it('gives the square of the root of two on the series of the dtaidistance documentation', () => {
    expect(dtw(s1, s2, SQUARED)).toBe(2)
  })
  it('falls from the Euclidean 8 to 2 as the band opens (computed from the definition)', () => {
    expect([0, 1, 2, 3].map((band) => dtw(s1, s2, SQUARED, band))).toEqual([8, 2, 2, 2])
  })
  it('warps two channels together: 1.25 on the dtaidistance two-dimensional data', () => {
    // The data hold a 0.5, so all values are doubled and the squared cost is four times as large.
    const a = [0, 0, 0, 2, 4, 2, 0, 2, 0, 0]
    const b = [0, 0, 4, 2, 0, 2, 0, 1, 0, 0]
    expect(dtw(a, b, SQUARED, WIDE, 2) / 4).toBe(1.25)
  })

  it('gives 768 on the ramps of the aeon documentation', () => {
    const ramp = (from: number) => Array.from({ length: 10 }, (_, i) => from + i)
    expect(dtw(ramp(1), ramp(11), SQUARED)).toBe(768)
  })
  it('gives 2 on the boundary series of librosa (computed from the definition)', () => {
    expect(dtw([1, 2, 3, 4, 5], [1, 1, 1, 2, 4, 5, 6, 5, 5], ABSOLUTE)).toBe(2)
  })
  it('gives 19 between a series and zeros, as the tslearn documentation has its root', () => {
    expect(dtw([1, 2, 3, 2, 1], [0, 0, 0, 0, 0], SQUARED)).toBe(19)
  })
})

describe('dynamic time warping on random series', () => {
  it('agrees with the npm package dynamic-time-warping, without a band', () => {
    const random = createRandom(20)
    for (let round = 0; round < 300; round++) {
      const channels = 1 + random.integer(6)
      const series = () =>
        Array.from({ length: 1 + random.integer(40) }, () =>
          Array.from({ length: channels }, () => random.integer(256) - 128),
        )
      const [a, b] = [series(), series()]
      const absolute = (p: number[], q: number[]) =>
        p.reduce((sum, value, c) => sum + Math.abs(value - q[c]!), 0)
      const squared = (p: number[], q: number[]) =>
        p.reduce((sum, value, c) => sum + (value - q[c]!) ** 2, 0)
      for (const [cost, local] of [
        [ABSOLUTE, absolute],
        [SQUARED, squared],
      ] as const) {
        const expected = new DynamicTimeWarping(a, b, local).getDistance()
        expect(dtw(a.flat(), b.flat(), cost, WIDE, channels)).toBe(expected)
      }
    }
  })

  it('is never nearer with a narrower band and never farther than point by point', () => {
    const random = createRandom(21)
    for (let round = 0; round < 100; round++) {
      const series = () => Array.from({ length: 24 }, () => random.integer(256) - 128)
      const [a, b] = [series(), series()]
      const straight = a.reduce((sum, value, i) => sum + (value - b[i]!) ** 2, 0)
      const byBand = [0, 1, 3, 8, 23].map((band) => dtw(a, b, SQUARED, band))
      expect(byBand[0]).toBe(straight)
      for (let i = 1; i < byBand.length; i++) expect(byBand[i]!).toBeLessThanOrEqual(byBand[i - 1]!)
      expect(dtw(b, a, SQUARED, 3)).toBe(byBand[2])
    }
  })

  it('gives up exactly when the distance exceeds the limit', () => {
    const random = createRandom(22)
    for (let round = 0; round < 100; round++) {
      const series = () => Int8Array.from({ length: 20 }, () => random.integer(256) - 128)
      const [a, b] = [series(), series()]
      const at = (limit?: number) =>
        core.dtw(a, b, {
          channels: 1,
          band: 4,
          cost: SQUARED,
          ...(limit !== undefined && { limit }),
        })
      const distance = at()
      expect(at(distance)).toBe(distance)
      expect(at(distance - 1)).toBe(Number.POSITIVE_INFINITY)
    }
  })

  it('holds the largest sum there is: int8 extremes over 128 points and six axes', () => {
    const low = new Int8Array(128 * 6).fill(-128)
    const high = new Int8Array(128 * 6).fill(127)
    // All cells cost the same, so the shortest path, the diagonal, is best.
    const straight = core.dtw(low, high, { channels: 6, band: 127, cost: SQUARED })
    expect(straight).toBe(128 * 6 * 255 * 255)
  })

  it('fills a matrix with the same distances one by one', () => {
    const random = createRandom(23)
    const many = Array.from({ length: 5 }, () =>
      Int8Array.from({ length: 32 }, () => random.integer(256) - 128),
    )
    const options = { channels: 2, band: 4, cost: SQUARED } as const
    const matrix = core.dtwMatrix(many, many.slice(1), options)
    many.forEach((a, i) => {
      many.slice(1).forEach((b, j) => {
        expect(matrix[i * 4 + j]).toBe(core.dtw(a, b, options))
      })
    })
  })
})
