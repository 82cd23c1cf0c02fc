import { expect, test } from 'vitest'
import { expectedGain, type Trial } from '../../../src/shared/decide/learning-gain'
import { medianInterval } from '../../../src/shared/decide/median-interval'
import { toldByValue } from '../../../src/shared/decide/scalars'

/** Errors that fall as a power of the count, in so many takes that their rounding hardly counts. */
function falling(power: number, testers = 4): Trial[] {
  return [1, 2, 4, 8].flatMap((count) =>
    Array.from({ length: testers }, (_, t) => ({
      tester: `T${t}`,
      count,
      wrong: Math.round(40_000 * 0.2 * count ** -power),
      n: 40_000,
    })),
  )
}

test('a gain is drawn on as the power that the errors follow', () => {
  const gain = expectedGain(falling(0.5), 16)
  expect(gain?.value).toBeCloseTo(0.2 * (8 ** -0.5 - 16 ** -0.5), 4)
  expect(gain?.low).toBeLessThanOrEqual(gain?.value ?? 0)
  expect(expectedGain(falling(0), 16)?.value).toBeCloseTo(0, 6)
})

test('testers that disagree widen a gain until it may be none', () => {
  const trials = falling(0.5).map((trial) =>
    trial.tester === 'T0' ? { ...trial, wrong: 4000 + 900 * trial.count } : trial,
  )
  const gain = expectedGain(trials, 16)
  expect((gain?.high ?? 0) - (gain?.low ?? 0)).toBeGreaterThan(0.02)
})

test('the interval of a gain is that of Student with as many degrees of freedom as testers less one', () => {
  const trials = falling(0.5, 3).map((trial, i) => ({
    ...trial,
    wrong: trial.wrong + 37 * (i % 3),
  }))
  const gain = expectedGain(trials, 16)!
  const left = ['T0', 'T1', 'T2'].map(
    (out) =>
      expectedGain(
        trials.filter(({ tester }) => tester !== out),
        16,
      )!.value,
  )
  const middle = left.reduce((sum, value) => sum + value, 0) / 3
  const error = Math.sqrt((2 / 3) * left.reduce((sum, value) => sum + (value - middle) ** 2, 0))
  expect(error).toBeGreaterThan(0)
  // Quantile 0.975 of t with 2 degrees of freedom (NIST/SEMATECH e-Handbook, 1.3.6.7.2).
  expect((gain.high - gain.value) / error).toBeCloseTo(4.303, 6)
  expect((gain.value - gain.low) / error).toBeCloseTo(4.303, 6)
})

test('two counts or one tester are no curve', () => {
  expect(
    expectedGain(
      falling(0.5).filter(({ count }) => count < 4),
      16,
    ),
  ).toBeNull()
  expect(expectedGain(falling(0.5, 1), 16)).toBeNull()
})

test('the interval of a median lies between the ranks that Conover gives: 8 and 18 of 25 at 95 %', () => {
  const { value, low, high } = medianInterval(Array.from({ length: 25 }, (_, i) => i + 1))
  // n/2 ∓ 1.96 √n / 2 = 7.6 and 17.4, outwards to whole ranks with one added above.
  expect([value, low, high]).toEqual([13, 7, 19])
})

test('one number tells two gestures apart by the medians of the other testers', () => {
  const values = ['T0', 'T1', 'T2'].flatMap((tester, t) =>
    [1, 1.1, 2, 2.2].map((value, i) => ({
      gesture: i < 2 ? 0 : 1,
      tester,
      value: value * (1 + t / 10),
    })),
  )
  expect(toldByValue(values, 0, 1)).toMatchObject({ hits: 12, n: 12 })
  const alike = values.map((one) => ({ ...one, value: 1 }))
  expect(toldByValue(alike, 0, 1).hits).toBe(0)
})
