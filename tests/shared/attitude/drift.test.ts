import { describe, expect, test } from 'vitest'
import { measureDrift } from '../../../src/shared/attitude/drift'
import { evenTimes, sampled } from '../conditioning/samples'

const G = 9.80665

/** Rest, a turn of 90° about x in a second, rest; the gyroscope shows `gain` of it plus a bias. */
function quarterTurn(gain: number, biasDps: number) {
  return sampled(evenTimes(100, 4), (t) => {
    const share = Math.min(Math.max(t - 1.5, 0), 1)
    // 90° as the integral of 45 π sin(π share): smooth, at rest at both ends.
    const angle = (45 * (1 - Math.cos(Math.PI * share)) * Math.PI) / 180
    const rate = share > 0 && share < 1 ? 45 * Math.PI * Math.sin(Math.PI * share) : 0
    return [0, G * Math.sin(angle), G * Math.cos(angle), gain * rate + biasDps, 0, biasDps]
  })
}

describe('drift of a recording', () => {
  test('a true gyroscope is at gravity again after 90°, and shows nothing at rest', () => {
    const { rest, turn } = measureDrift(quarterTurn(1, 0), 1)
    expect(rest?.dps).toBeCloseTo(0, 6)
    expect(turn?.turnedDeg).toBeGreaterThan(80)
    expect(turn?.turnedDeg).toBeLessThanOrEqual(90.1)
    expect(turn?.errorDeg).toBeLessThan(0.2)
  })

  test('a gain 4 % too large is 3.6° off after 90°', () => {
    const { turn } = measureDrift(quarterTurn(1.04, 0), 1)
    expect(turn?.errorDeg).toBeGreaterThan(3)
    expect(turn?.errorDeg).toBeLessThan(3.8)
  })

  test('a bias is seen at rest as it is, two axes of 2 deg/s as 2.83', () => {
    expect(measureDrift(quarterTurn(1, 2), 1).rest?.dps).toBeCloseTo(2 * Math.SQRT2, 1)
  })

  test('an inverted accelerometer is judged by the sign that is known of it', () => {
    const block = quarterTurn(1, 0)
    for (let i = 0; i < block.values.length; i += 6) {
      for (let axis = 0; axis < 3; axis++) block.values[i + axis] *= -1
    }
    expect(measureDrift(block, -1).turn?.errorDeg).toBeLessThan(0.2)
  })

  test('without rest nothing is known, with one rest nothing of turns', () => {
    const shaken = sampled(evenTimes(100, 2), (t) => [0, 0, G + 5 * Math.sin(40 * t), 90, 0, 0])
    expect(measureDrift(shaken, 1)).toEqual({ rest: null, turn: null })
    const still = sampled(evenTimes(100, 2), () => [0, 0, G, 0.5, 0, 0])
    expect(measureDrift(still, 1)).toMatchObject({ rest: { dps: 0.5 }, turn: null })
  })
})
