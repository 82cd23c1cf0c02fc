import { describe, expect, it } from 'vitest'
import { createRandom, randomFromState } from '../../../src/shared/statistics/random'

describe('random', () => {
  it('gives the numbers of the xoshiro128** reference code for the state 1 2 3 4', () => {
    // Outputs of the authors' C code, as tested in the crate rand_xoshiro 0.7.0.
    const random = randomFromState([1, 2, 3, 4])
    const expected = [
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597,
      4258142804,
    ]
    expect(expected.map(() => random.nextUint32())).toEqual(expected)
  })

  it('repeats itself for the same seed and differs for the next', () => {
    const draw = (seed: number) => Array.from({ length: 8 }, createRandom(seed).nextUint32)
    expect(draw(7)).toEqual(draw(7))
    expect(draw(7)).not.toEqual(draw(8))
  })

  it('has the moments of the normal distribution within four standard errors', () => {
    const random = createRandom(3)
    const n = 40_000
    const values = Array.from({ length: n }, () => random.normal())
    const mean = values.reduce((sum, value) => sum + value, 0) / n
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1)
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(n))
    expect(Math.abs(variance - 1)).toBeLessThan(4 * Math.sqrt(2 / n))
  })

  it('keeps uniform numbers and integers inside their bounds', () => {
    const random = createRandom(11)
    for (let i = 0; i < 2000; i++) {
      const value = random.uniform(-2, 5)
      expect(value).toBeGreaterThanOrEqual(-2)
      expect(value).toBeLessThan(5)
      expect([0, 1, 2]).toContain(random.integer(3))
    }
  })
})
