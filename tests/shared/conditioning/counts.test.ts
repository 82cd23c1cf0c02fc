import { describe, expect, test } from 'vitest'
import { conditionRecording } from '../../../src/shared/conditioning/condition-recording'
import { roundHalfAway } from '../../../src/shared/conditioning/counts'
import { defaultTarget } from '../../../src/shared/target/default-target'
import { MOUNTINGS } from '../../../src/shared/target/mountings'
import { sensorFamily } from '../../../src/shared/target/presets'
import { evenTimes, sampled } from './samples'

function target(family: string, accelG: number, gyroDps: number) {
  const { accelRanges, gyroRanges } = sensorFamily(family)!
  return {
    ...defaultTarget(),
    preset: family,
    accel: accelRanges.find((range) => range.fullScale === accelG)!,
    gyro: gyroRanges.find((range) => range.fullScale === gyroDps)!,
  }
}

type Six = [number, number, number, number, number, number]

/** Counts of a motion that never changes. */
function steady(values: Six, toTarget = target('decimal', 8, 1000)) {
  const { counts, clippedCount } = conditionRecording(
    sampled(evenTimes(60, 0.5), () => values),
    toTarget,
    1,
  )
  return { first: [...counts.slice(0, 6)], last: [...counts.slice(-6)], clippedCount, counts }
}

describe('counts', () => {
  test('1 g is 16384, -1 g is -16384 and 0.5 g is 8192 at ±2 g of the power-of-two family', () => {
    const result = steady([9.80665, -9.80665, 4.903325, 0, 0, 0], target('power-of-two', 2, 250))
    expect(result.first).toEqual([16384, -16384, 8192, 0, 0, 0])
    expect(result.last).toEqual(result.first)
  })

  test('1 g is 4098 counts at ±8 g of the decimal family', () => {
    expect(steady([0, 0, 9.80665, 0, 0, 0]).first[2]).toBe(4098)
  })

  test('99.995 and 200 deg/s are 0x2CA4 and 0x5949 at ±250 deg/s of the decimal family', () => {
    const result = steady([0, 0, 9.8, 99.995, -99.995, 200], target('decimal', 2, 250))
    expect(result.first.slice(3)).toEqual([0x2ca4, -0x2ca4, 0x5949])
    expect(result.clippedCount).toBe(0)
  })

  test('the decimal ±250 deg/s range reads past its name and clips at 286.7 deg/s, counted', () => {
    const reads = steady([0, 0, 9.8, 286.7, 0, 0], target('decimal', 2, 250))
    expect(reads.first[3]).toBe(32766)
    expect(reads.clippedCount).toBe(0)
    const clips = steady([0, 0, 9.8, 287, -300, 0], target('decimal', 2, 250))
    expect(clips.first.slice(3, 5)).toEqual([32767, -32768])
    expect(clips.clippedCount).toBe((2 * clips.counts.length) / 6)
  })

  test('+2 g clips to 32767 and -2 g is -32768 exactly, at ±2 g of the power-of-two family', () => {
    const pure = { ...target('power-of-two', 2, 250), accel: { fullScale: 2, nanoPerLsb: 61_035 } }
    const result = steady([2.1 * 9.80665, -2.1 * 9.80665, 0, 0, 0, 0], pure)
    expect(result.first.slice(0, 2)).toEqual([32767, -32768])
  })

  test('halves are rounded away from zero, as lround does', () => {
    expect([2.5, -2.5, 1.5, -0.5, 0.49, -0.49].map(roundHalfAway)).toEqual([3, -3, 2, -1, 0, -0])
  })
})

describe('sign and mounting', () => {
  const one = sampled(evenTimes(60, 0.3), () => [1, 2, 9.8, 10, 20, 30])

  test('an inverted accelerometer is turned back, its gyroscope is left alone', () => {
    const inverted = sampled(evenTimes(60, 0.3), () => [-1, -2, -9.8, 10, 20, 30])
    expect(conditionRecording(inverted, defaultTarget(), -1)).toEqual(
      conditionRecording(one, defaultTarget(), 1),
    )
  })

  test('a sign not found out is taken as the standard one', () => {
    expect(conditionRecording(one, defaultTarget(), 0)).toEqual(
      conditionRecording(one, defaultTarget(), 1),
    )
  })

  test('each mounting permutes and negates axes of both sensors alike', () => {
    const plain = conditionRecording(one, defaultTarget(), 1).counts
    for (const { matrix } of MOUNTINGS) {
      const turned = conditionRecording(one, { ...defaultTarget(), mounting: matrix }, 1).counts
      for (const sensor of [0, 3]) {
        for (let i = 0; i < 3; i++) {
          const expected = [0, 1, 2].reduce(
            (sum, j) => sum + matrix[3 * i + j]! * plain[sensor + j]!,
            0,
          )
          expect(turned[sensor + i]).toBe(expected)
        }
      }
    }
  })

  test('a free rotation keeps the length of both vectors (50° about 1 2 3, SciPy)', () => {
    const mounting = [
      0.66830278, -0.563171626, 0.486013491, 0.665232309, 0.744848293, -0.051642965, -0.332922466,
      0.357825014, 0.872424146,
    ] as (typeof MOUNTINGS)[0]['matrix']
    const plain = conditionRecording(one, defaultTarget(), 1).counts
    const turned = conditionRecording(one, { ...defaultTarget(), mounting }, 1).counts
    for (const sensor of [0, 3]) {
      const length = (c: Int16Array) => Math.hypot(c[sensor]!, c[sensor + 1]!, c[sensor + 2]!)
      expect(Math.abs(length(turned) - length(plain))).toBeLessThan(1.5)
    }
  })
})
