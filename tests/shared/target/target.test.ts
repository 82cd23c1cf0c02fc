import { describe, expect, test } from 'vitest'
import type { Matrix3 } from '../../../src/shared/model/target'
import { boardOf, tipInPhone } from '../../../src/shared/target/board'
import { defaultTarget } from '../../../src/shared/target/default-target'
import { MOUNTINGS, nearestMounting } from '../../../src/shared/target/mountings'
import { sensorFamily, TARGET_PRESETS } from '../../../src/shared/target/presets'
import { determinant, orthonormalError } from '../../../src/shared/target/rotation'
import { validateMounting, validateTarget } from '../../../src/shared/target/validate-target'

describe('sensitivities', () => {
  test('power-of-two ranges put full scale at count 32768', () => {
    const family = sensorFamily('power-of-two')!
    for (const range of [...family.accelRanges, ...family.gyroRanges]) {
      expect((range.fullScale * 1e9) / range.nanoPerLsb / 32768).toBeCloseTo(1, 5)
    }
  })

  test('decimal gyroscope ranges reach full scale at count 28571, 14.688 % away from range / 32768', () => {
    for (const range of sensorFamily('decimal')!.gyroRanges) {
      expect(Math.floor((range.fullScale * 1e9) / range.nanoPerLsb)).toBe(28571)
      expect(range.nanoPerLsb / ((range.fullScale * 1e9) / 32768)).toBeCloseTo(1.14688, 6)
    }
  })

  test('decimal counts at one g are those of the public register driver', () => {
    const perG = sensorFamily('decimal')!.accelRanges.map((range) => 1e9 / range.nanoPerLsb)
    const published = [16393.4426, 8196.7213, 4098.3607, 2049.1803]
    for (const [i, value] of perG.entries()) expect(value).toBeCloseTo(published[i]!, 4)
  })

  test('count 11428 (0x2CA4) at ±250 deg/s is 99.995 deg/s, count 22857 (0x5949) is 199.99875', () => {
    const range = sensorFamily('decimal')!.gyroRanges.find((r) => r.fullScale === 250)!
    expect((0x2ca4 * range.nanoPerLsb) / 1e9).toBeCloseTo(99.995, 9)
    expect((0x5949 * range.nanoPerLsb) / 1e9).toBeCloseTo(199.99875, 9)
  })

  test('int16 saturates the decimal ±250 deg/s range at 286.7 deg/s', () => {
    expect((32767 * 8_750_000) / 1e9).toBeCloseTo(286.71, 2)
  })

  test('all offered rates and ranges make a valid target', () => {
    for (const family of TARGET_PRESETS) {
      for (const accel of family.accelRanges) {
        for (const gyro of family.gyroRanges) {
          for (const rateHz of family.ratesHz) {
            const target = { ...defaultTarget(), preset: family.key, accel, gyro, rateHz }
            expect(validateTarget(target)).toEqual({ ok: true, value: target })
          }
        }
      }
    }
  })
})

describe('mountings', () => {
  test('there are 24, all different, all proper rotations, identity first', () => {
    expect(new Set(MOUNTINGS.map((m) => m.key)).size).toBe(24)
    for (const { matrix } of MOUNTINGS) {
      expect(determinant(matrix)).toBe(1)
      expect(orthonormalError(matrix)).toBe(0)
    }
    expect(MOUNTINGS[0]!.key).toBe('+x+y+z')
  })

  test('their traces are those of the octahedral rotation group: 1, 6, 8 and 9 of them', () => {
    const counts = new Map<number, number>()
    for (const { matrix } of MOUNTINGS) {
      const trace = matrix[0] + matrix[4] + matrix[8]
      counts.set(trace, (counts.get(trace) ?? 0) + 1)
    }
    expect(Object.fromEntries(counts)).toEqual({ 3: 1, 1: 6, 0: 8, [-1]: 9 })
  })

  test('the group is closed: any mounting after any other is a mounting', () => {
    const keys = new Set(MOUNTINGS.map((m) => m.matrix.join()))
    for (const a of MOUNTINGS) {
      for (const b of MOUNTINGS) {
        const product = [0, 1, 2].flatMap((i) =>
          [0, 1, 2].map((j) =>
            [0, 1, 2].reduce((sum, k) => sum + a.matrix[3 * i + k]! * b.matrix[3 * k + j]!, 0),
          ),
        )
        expect(keys.has(product.map((v) => v + 0).join())).toBe(true)
      }
    }
  })

  test('a name says which prop axis each board axis shows', () => {
    const mounting = MOUNTINGS.find((m) => m.key === '+y-x+z')!
    expect(mounting.name).toBe('board x = prop y, board y = −prop x, board z = prop z')
    expect(mounting.matrix).toEqual([0, 1, 0, -1, 0, 0, 0, 0, 1])
  })

  test('a fitted rotation snaps to its axis permutation 1.4976778 degrees away (SciPy 1.17.1)', () => {
    const fitted: Matrix3 = [
      0.025083513, 0.999671903, -0.005186879, -0.99967218, 0.025056202, -0.005264998, -0.005133307,
      0.005317243, 0.999972688,
    ]
    const nearest = nearestMounting(fitted)
    expect(nearest.mounting.key).toBe('+y-x+z')
    expect(nearest.angleDeg).toBeCloseTo(1.4976778, 5)
  })
})

describe('checks of a target', () => {
  const broken = (change: object) => validateTarget({ ...defaultTarget(), ...change })

  test('the default target is valid and given anew each time', () => {
    expect(validateTarget(defaultTarget()).ok).toBe(true)
    defaultTarget().mounting[0] = 5
    expect(defaultTarget().mounting[0]).toBe(1)
  })

  test('a mirrored mounting is told apart from one that is no rotation', () => {
    expect(validateMounting([1, 0, 0, 0, 1, 0, 0, 0, -1])).toMatchObject({
      code: 'target/mounting-flipped',
      message: expect.stringContaining('an axis sign is flipped'),
    })
    expect(validateMounting([1, 0, 0, 0, 2, 0, 0, 0, 1])).toMatchObject({
      code: 'target/mounting-not-rotation',
    })
    expect(validateMounting([1, 0, 0, 0, Number.NaN, 0, 0, 0, 1])).toMatchObject({
      code: 'target/mounting',
    })
  })

  test('a rotation by any angle, typed with four decimals, is accepted', () => {
    expect(
      validateMounting([0.6683, -0.5632, 0.486, 0.6652, 0.7448, -0.0516, -0.3329, 0.3578, 0.8724])
        .ok,
    ).toBe(true)
  })

  test('each wrong field has its own failure', () => {
    expect(broken({ name: ' ' })).toMatchObject({ code: 'target/name' })
    expect(broken({ rateHz: 1000 })).toMatchObject({ code: 'target/rate' })
    expect(broken({ rateHz: Number.NaN })).toMatchObject({ code: 'target/rate' })
    expect(broken({ longAxis: 'w' })).toMatchObject({ code: 'target/long-axis' })
    expect(broken({ clockHz: 0 })).toMatchObject({ code: 'target/board' })
    expect(broken({ modelBudgetBytes: 1e9 })).toMatchObject({ code: 'target/board' })
  })

  test('a sensitivity in the wrong unit is caught by where it puts full scale', () => {
    expect(broken({ accel: { fullScale: 8, nanoPerLsb: 244 } })).toMatchObject({
      code: 'target/accelerometer',
      message: expect.stringContaining('count 32786885'),
    })
    expect(broken({ gyro: { fullScale: 250, nanoPerLsb: 8.75 } })).toMatchObject({
      code: 'target/gyroscope',
    })
  })
})

test('the board of a target carries the data sheet figures in the units of the core', () => {
  expect(boardOf({ ...defaultTarget(), rateHz: 12.5 })).toEqual({
    rateMillihertz: 12500,
    accelNgPerLsb: 244_000,
    gyroNdpsPerLsb: 35_000_000,
  })
})

test('the tip is found in phone axes through the mounting', () => {
  const { matrix } = MOUNTINGS.find((m) => m.key === '+y-x+z')!
  expect(tipInPhone({ ...defaultTarget(), mounting: matrix, longAxis: 'x' })).toEqual([0, 1, 0])
})
