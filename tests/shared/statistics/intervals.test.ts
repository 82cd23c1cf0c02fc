import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { chiSquareQuantile, gammaP, gammaQ, logGamma } from '../../../src/shared/statistics/gamma'
import { mcnemarExact } from '../../../src/shared/statistics/mcnemar'
import {
  hoursWithoutEventToClaim,
  poissonInterval,
  poissonPerHour,
} from '../../../src/shared/statistics/poisson'
import { normalHalfWidth, wilson } from '../../../src/shared/statistics/wilson'

describe('Wilson interval', () => {
  test.each([
    // R prop.test(correct = FALSE) and statsmodels; 81/263, 15/148, 0/20, 1/29 are the cases of
    // Newcombe, Stat. Med. 17:857 (1998), Table I; 4/20 is the count of NIST 7.2.4.2.
    [0, 10, 0, 0.277533],
    [8, 10, 0.490162, 0.943318],
    [9, 10, 0.59585, 0.982124],
    [10, 10, 0.722467, 1],
    [0, 20, 0, 0.161125],
    [4, 20, 0.080658, 0.416017],
    [27, 30, 0.743789, 0.9654],
    [45, 50, 0.786398, 0.956524],
    [90, 100, 0.825634, 0.944771],
    [95, 100, 0.88825, 0.978456],
    [100, 100, 0.963007, 1],
    [81, 263, 0.255289, 0.36621],
    [15, 148, 0.062386, 0.160487],
    [1, 29, 0.006113, 0.171755],
  ])('%i of %i is %f to %f', (hits, n, low, high) => {
    const rate = wilson(hits, n)
    expect(rate.low).toBeCloseTo(low, 6)
    expect(rate.high).toBeCloseTo(high, 6)
    expect(rate.value).toBe(hits / n)
  })

  test('other confidences: 90 % of 4/20 and 99 % of 90/100 (R)', () => {
    expect(wilson(4, 20, 0.9).low).toBeCloseTo(0.093118, 6)
    expect(wilson(4, 20, 0.9).high).toBeCloseTo(0.378377, 6)
    expect(wilson(90, 100, 0.99).low).toBeCloseTo(0.796249, 6)
    expect(wilson(90, 100, 0.99).high).toBeCloseTo(0.953974, 6)
  })

  test('no trials leave everything possible', () => {
    expect(wilson(0, 0)).toEqual({ hits: 0, n: 0, value: Number.NaN, low: 0, high: 1 })
  })

  test('what is not a share is refused', () => {
    for (const [hits, n] of [
      [3, 2],
      [-1, 2],
      [0.5, 2],
      [Number.NaN, 2],
    ] as const) {
      expect(() => wilson(hits, n)).toThrow(RangeError)
    }
  })
})

describe('Garwood interval of a Poisson count', () => {
  test.each([
    // R poisson.test; the lower limit of 1 is -ln 0.975 exactly.
    [0, 0, 3.688879],
    [1, 0.025317808, 5.571643],
    [2, 0.242209, 7.224688],
    [3, 0.618672, 8.767273],
    [4, 1.089865, 10.241589],
    [5, 1.623486, 11.668332],
    [10, 4.795389, 18.390356],
    [12, 6.200575, 20.961585],
  ])('%i events: %f to %f', (count, low, high) => {
    const interval = poissonInterval(count)
    expect(interval.low).toBeCloseTo(low, 6)
    expect(interval.high).toBeCloseTo(high, 6)
  })

  test('137 events in 24.19893 hours are 5.661407 an hour, 4.753125 to 6.692709 (R)', () => {
    const rate = poissonPerHour(137, 24.19893)
    expect(rate.perHour).toBeCloseTo(5.661407, 6)
    expect(rate.low).toBeCloseTo(4.753125, 6)
    expect(rate.high).toBeCloseTo(6.692709, 6)
  })

  test('3 activations in 8 hours are 0.375 an hour, 0.077334 to 1.095909', () => {
    const rate = poissonPerHour(3, 8)
    expect(rate.low).toBeCloseTo(0.077334, 6)
    expect(rate.high).toBeCloseTo(1.095909, 6)
  })

  test('nothing watched says nothing', () => {
    expect(poissonPerHour(0, 0)).toMatchObject({ perHour: Number.NaN, low: 0, high: Infinity })
    expect(() => poissonPerHour(1.5, 1)).toThrow(RangeError)
    expect(() => poissonPerHour(1, Number.NaN)).toThrow(RangeError)
  })

  test('hours without an event to claim less than 1, 0.5 and 0.1 an hour (rule of three)', () => {
    expect(hoursWithoutEventToClaim(1)).toBeCloseTo(2.995732, 6)
    expect(hoursWithoutEventToClaim(0.5)).toBeCloseTo(5.991465, 6)
    expect(hoursWithoutEventToClaim(0.1)).toBeCloseTo(29.957323, 6)
  })
})

describe('gamma function', () => {
  test('chi-square quantiles agree with jstat over eight decades of probability', () => {
    for (const freedom of [1, 2, 3, 10, 50, 274]) {
      for (const p of [1e-6, 0.005, 0.025, 0.5, 0.95, 0.975, 0.999]) {
        const expected = jstat.chisquare.inv(p, freedom)
        expect(chiSquareQuantile(p, freedom) / expected).toBeCloseTo(1, 7)
      }
    }
  })

  test('the quantile with two degrees of freedom is -2 ln(1 - p) to 14 digits', () => {
    for (const p of [1e-9, 0.025, 0.5, 0.975, 1 - 1e-9]) {
      expect(chiSquareQuantile(p, 2) / (-2 * Math.log1p(-p))).toBeCloseTo(1, 13)
    }
  })

  test('P and Q are the two sides of one, and P(1, x) is 1 - exp(-x)', () => {
    for (const a of [0.5, 1, 7, 300]) {
      for (const x of [0.01, 1, a, a + 2, 2 * a + 50]) {
        expect(gammaP(a, x) + gammaQ(a, x)).toBeCloseTo(1, 12)
      }
    }
    expect(gammaP(1, 2)).toBeCloseTo(1 - Math.exp(-2), 14)
  })

  test('ln Γ of whole numbers is the sum of logarithms, ln Γ(1/2) is ln √π', () => {
    let sum = 0
    for (let n = 1; n < 60; n++) {
      sum += Math.log(n)
      expect(logGamma(n + 1)).toBeCloseTo(sum, 10)
    }
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 13)
  })

  test('a 95 % interval is 1.959963984540054 standard deviations to either side', () => {
    expect(normalHalfWidth(0.95)).toBeCloseTo(1.959963984540054, 12)
  })
})

describe('exact McNemar test', () => {
  test.each([
    // R binom.test and statsmodels; 86/150 is Agresti's approval data.
    [121, 59, 4.4344e-6, 10],
    [86, 150, 3.7159e-5, 9],
    [10, 2, 0.038574219, 9],
    [8, 1, 0.0390625, 9],
    [5, 0, 0.0625, 12],
    [6, 0, 0.03125, 12],
    [15, 5, 0.041389, 6],
    [12, 2, 0.012939, 6],
  ])('%i against %i has p = %f', (first, second, p, digits) => {
    expect(mcnemarExact(first, second)).toBeCloseTo(p, digits)
    expect(mcnemarExact(second, first)).toBe(mcnemarExact(first, second))
  })

  test('even disagreement and none at all give p = 1', () => {
    expect(mcnemarExact(4, 4)).toBe(1)
    expect(mcnemarExact(0, 0)).toBe(1)
  })
})
