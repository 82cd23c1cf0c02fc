import { expect, test } from 'vitest'
import {
  dashes,
  LOW_RISK_HZ,
  modulationLimits,
  NO_EFFECT_HZ,
  pwmFlickerIndex,
  pwmModulation,
} from '../../../src/shared/light/flicker'

/** IEEE Std 1789-2015, 8.1.1, as two independent pages give it, and figures worked out from it. */
test.each([
  [50, 1.25, 0.5],
  [60, 1.5, 0.6],
  [89.9, 2.2475, 0.899],
  [90, 7.2, 2.997],
  [100, 8, 3.33],
  [120, 9.6, 3.996],
  [250, 20, 8.325],
  [490, 39.2, 16.317],
  [976.5625, 78.125, 32.52],
  [1000, 80, 33.3],
  [1250, 100, 41.6],
])('%f Hz: %f %% modulation are low risk, %f %% without effect', (hz, lowRisk, noEffect) => {
  expect(modulationLimits(hz).lowRisk).toBeCloseTo(lowRisk, 9)
  expect(modulationLimits(hz).noEffect).toBeCloseTo(noEffect, 1)
})

test('above 1250 Hz nothing is more than low risk, above 3000 Hz there is no limit', () => {
  expect(modulationLimits(3000)).toEqual({
    lowRisk: Number.POSITIVE_INFINITY,
    noEffect: expect.closeTo(99.9, 9),
  })
  expect(modulationLimits(3001).noEffect).toBe(Number.POSITIVE_INFINITY)
  expect(modulationLimits(LOW_RISK_HZ).lowRisk).toBe(100)
  expect(modulationLimits(NO_EFFECT_HZ).noEffect).toBeGreaterThanOrEqual(100)
})

test('PWM is full modulation at every duty below one; its flicker index is 1 - duty', () => {
  expect([0, 0.001, 0.5, 0.999, 1].map(pwmModulation)).toEqual([0, 100, 100, 100, 0])
  expect(pwmFlickerIndex(0.5)).toBe(0.5)
  expect(pwmFlickerIndex(0.25)).toBe(0.75)
})

test('a prop at 5 m/s draws dashes speed / frequency apart', () => {
  const spacing = (hz: number) => dashes(5, hz, 0.5).spacingMm
  expect(spacing(490)).toBeCloseTo(10.2, 1)
  expect(spacing(1000)).toBe(5)
  expect(spacing(3000)).toBeCloseTo(1.7, 1)
  expect(spacing(20_000)).toBe(0.25)
  expect(dashes(5, 1000, 0.25).litMm).toBe(1.25)
})
