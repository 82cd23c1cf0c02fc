import { describe, expect, test } from 'vitest'
import { clusteredRate } from '../../../src/shared/statistics/clustered'
import { pairedLoss, tangoScore } from '../../../src/shared/statistics/paired'
import { normalHalfWidth, wilson } from '../../../src/shared/statistics/wilson'

const Z = normalHalfWidth(0.95)

describe("Tango's score interval of a paired difference", () => {
  test('is -0.517 to -0.026 for 1 and 7 flips of 21, as Fagerland, Lydersen and Laake print it', () => {
    // Stat. Med. 33:2850 (2014): airway hyper-responsiveness before and after transplantation.
    const { value, low, high } = pairedLoss(1, 7, 21)
    expect(value).toBeCloseTo(-6 / 21, 12)
    expect(low).toBeCloseTo(-0.517, 3)
    expect(high).toBeCloseTo(-0.026, 3)
  })

  test.each([
    [40, 20, 160],
    [13, 3, 400],
    [0, 9, 50],
    [1, 7, 21],
  ])('ends where the score test turns: %i and %i of %i', (b, c, n) => {
    const { low, high } = pairedLoss(b, c, n)
    expect(tangoScore(b, c, n, low)).toBeCloseTo(Z, 6)
    expect(tangoScore(b, c, n, high)).toBeCloseTo(-Z, 6)
  })

  test('its restricted share is the likeliest one under the supposed difference', () => {
    const [b, c, n, difference] = [7, 3, 60, -0.05]
    const likelihood = (q: number) =>
      b * Math.log(q + difference) +
      c * Math.log(q) +
      (n - b - c) * Math.log(1 - 2 * q - difference)
    let best = 0.051
    for (let q = 0.051; q < 0.5; q += 1e-5) if (likelihood(q) > likelihood(best)) best = q
    const variance = n * (2 * best + difference * (1 - difference))
    expect(tangoScore(b, c, n, difference)).toBeCloseTo(
      (b - c - n * difference) / Math.sqrt(variance),
      3,
    )
  })

  test('without a flip it is z² / (n + z²) to either side, so n alone can be too few', () => {
    const { low, high } = pairedLoss(0, 0, 100)
    expect(high).toBeCloseTo((Z * Z) / (100 + Z * Z), 9)
    expect(low).toBeCloseTo(-high, 9)
    expect(pairedLoss(0, 0, 188).high).toBeGreaterThan(0.02)
    expect(pairedLoss(0, 0, 189).high).toBeLessThan(0.02)
  })

  test('turns with the two sides, stays within -1 and 1, and refuses what is no count', () => {
    const [one, other] = [pairedLoss(12, 5, 200), pairedLoss(5, 12, 200)]
    expect(one.low).toBeCloseTo(-other.high, 9)
    expect(pairedLoss(10, 0, 10).high).toBe(1)
    expect(pairedLoss(0, 10, 10).low).toBe(-1)
    expect(pairedLoss(0, 0, 0).low).toBe(-1)
    expect(() => pairedLoss(6, 5, 10)).toThrow(RangeError)
    expect(() => pairedLoss(0.5, 0, 10)).toThrow(RangeError)
  })
})

describe('a share over testers', () => {
  test('is the Wilson interval where all testers are alike, and wider where they differ', () => {
    const even = clusteredRate(Array.from({ length: 40 }, () => ({ hits: 9, n: 10 })))
    expect(even).toEqual(wilson(360, 400))
    const uneven = clusteredRate([
      { hits: 40, n: 40 },
      { hits: 40, n: 40 },
      { hits: 20, n: 40 },
      { hits: 38, n: 40 },
    ])
    const plain = wilson(138, 160)
    expect(uneven.value).toBe(plain.value)
    expect(uneven.low).toBeLessThan(plain.low)
    expect(uneven.high).toBeGreaterThan(plain.high)
    expect(uneven.n).toBe(160)
  })

  test('with ten testers of ten takes the effective number follows the spread between testers', () => {
    // Korn and Graubard 1998 by hand: p = 0.8, variance of the mean 10/9 · Σ(h - 8)² / 100², and
    // (t(99) / t(9))² = (1.96 / 2.262)² with the normal quantile for 99 degrees of freedom.
    const hits = [6, 10, 8, 9, 7, 10, 6, 8, 9, 7]
    const rate = clusteredRate(hits.map((h) => ({ hits: h, n: 10 })))
    const variance = ((10 / 9) * 20) / 100 ** 2
    const effective = ((0.8 * 0.2) / variance) * (1.96 / 2.262) ** 2
    const n = Math.min(100, effective)
    const centre = (0.8 + Z ** 2 / (2 * n)) / (1 + Z ** 2 / n)
    const half = (Z * Math.sqrt(0.16 / n + Z ** 2 / (4 * n * n))) / (1 + Z ** 2 / n)
    expect(rate.low).toBeCloseTo(centre - half, 9)
    expect(rate.high).toBeCloseTo(centre + half, 9)
  })
})
