import { describe, expect, test } from 'vitest'
import { createRandom } from '../../../src/shared/statistics/random'
import { shuffled } from '../../../src/shared/statistics/shuffled'
import {
  mean,
  median,
  medianAbsoluteDeviation,
  quantile,
  standardDeviation,
} from '../../../src/shared/statistics/summary'

describe('summaries', () => {
  const dt = [16, 17, 17, 16, 17, 17, 17, 16, 17, 16, 34]

  test('of intervals between samples with one late sample', () => {
    expect(mean(dt)).toBeCloseTo(18.181818, 6)
    expect(standardDeviation(dt)).toBeCloseTo(5.269121, 6)
    expect(median(dt)).toBe(17)
    expect(medianAbsoluteDeviation(dt)).toBe(0)
  })

  test('quantiles interpolate between order statistics (type 7)', () => {
    expect(quantile([4, 1, 3, 2], 0.5)).toBe(2.5)
    expect(quantile([4, 1, 3, 2], 0.9)).toBeCloseTo(3.7, 12)
    expect(quantile([1, 2], 0)).toBe(1)
    expect(quantile([1, 2], 1)).toBe(2)
    expect(quantile([], 0.5)).toBeNaN()
  })

  test('they leave the given values in their order', () => {
    const values = [3, 1, 2]
    median(values)
    expect(values).toEqual([3, 1, 2])
  })
})

test('a shuffle keeps all items, puts each item everywhere equally often and leaves the list alone', () => {
  const items = [0, 1, 2, 3]
  const random = createRandom(9)
  const firsts = new Array<number>(4).fill(0)
  for (let i = 0; i < 20_000; i++) {
    const mixed = shuffled(items, random)
    firsts[mixed[0]!]! += 1
    if (i === 0) expect([...mixed].sort()).toEqual(items)
  }
  // Chi-square of three degrees of freedom, 99.9 % point.
  const chi2 = firsts.reduce((sum, count) => sum + (count - 5000) ** 2 / 5000, 0)
  expect(chi2).toBeLessThan(16.266)
  expect(items).toEqual([0, 1, 2, 3])
})
