import { describe, expect, it } from 'vitest'
import { createRandom } from '../../../../src/shared/statistics/random'
import { dilationsFor, planFeatures } from '../../../../src/shared/training/kernel/feature-plan'

describe('the plan of kernel features', () => {
  it('spreads dilations in powers up to where nine taps span the segment', () => {
    expect(dilationsFor(64)).toEqual([1, 2, 7])
    expect(dilationsFor(128)).toEqual([1, 2, 6, 15])
    expect(dilationsFor(8)).toEqual([1])
  })
  it('is the same for a seed, and a longer one begins like a shorter one', () => {
    const long = planFeatures(400, 32, 6, createRandom(5))
    expect(planFeatures(400, 32, 6, createRandom(5))).toEqual(long)
    expect(planFeatures(100, 32, 6, createRandom(5))).toEqual(long.slice(0, 100))
    expect(planFeatures(100, 32, 6, createRandom(6))).not.toEqual(long.slice(0, 100))
  })
  it('uses every kernel once with each dilation and signal before any twice', () => {
    const round = 84 * dilationsFor(32).length * 2
    const plan = planFeatures(round, 32, 3, createRandom(7))
    const kinds = plan.map(({ shape }) => `${shape.kernel} ${shape.dilation} ${shape.differences}`)
    expect(new Set(kinds).size).toBe(round)
  })
  it('adds up at least one channel that there is, and quantiles within 0 and 1', () => {
    for (const { shape, quantile } of planFeatures(500, 32, 5, createRandom(8))) {
      expect(shape.channels).toBeGreaterThan(0)
      expect(shape.channels).toBeLessThan(32)
      expect(quantile).toBeGreaterThanOrEqual(0)
      expect(quantile).toBeLessThan(1)
    }
  })
})
