import { describe, expect, it } from 'vitest'
import { fitAffine } from '../../../src/shared/board/calibration/affine-fit'
import { CORRECTION_ONE, calibrate } from '../../../src/shared/board/calibration/calibrate'
import { invert3 } from '../../../src/shared/board/math/solve3'
import { FAULTS } from '../../../src/shared/board/simulate/faults'
import { simulateBench } from '../../../src/shared/board/simulate/trial'
import type { Matrix3 } from '../../../src/shared/model/target'
import { createRandom } from '../../../src/shared/statistics/random'
import { defaultTarget } from '../../../src/shared/target/default-target'

const SIX = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
]

describe('tumble', () => {
  it('gives gain, cross-axis and offset of a real accelerometer turned through four positions', () => {
    // ADXL345 at full resolution, community.sparkfun.com thread 28294: 12, 3, 6 and 9 o'clock.
    const truth = [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ]
    const measured = [
      [280, 27],
      [10, 281],
      [-245, 11],
      [25, -242],
    ]
    const fit = fitAffine(truth, measured)!
    expect(fit.matrix.flat().map((v) => Number(v.toFixed(9)))).toEqual([262.5, -7.5, 8, 261.5])
    expect(fit.offset[0]).toBeCloseTo(17.5, 9)
    expect(fit.offset[1]).toBeCloseTo(19.25, 9)
    expect(fit.residual[0]).toBeCloseTo(0, 9)
    expect(fit.residual[1]).toBeCloseTo(0.25, 9)
  })

  it('takes the middle of two faces as offset, not half of it', () => {
    // forum.arduino.cc thread 499055: +1 g and -1 g X 246/-268, Y 243/-264, Z 238/-265. The offsets
    // printed there (-5.5, -5.25, -6.75) are half of the right ones.
    const measured = [
      [246, 0, 0],
      [-268, 0, 0],
      [0, 243, 0],
      [0, -264, 0],
      [0, 0, 238],
      [0, 0, -265],
    ]
    const pairs = [
      [246, -268],
      [243, -264],
      [238, -265],
    ]
    const offsets = pairs.map(([up, down]) => fitAffine([[1], [-1]], [[up!], [down!]])!)
    expect(offsets.map(({ offset }) => offset[0])).toEqual([-11, -10.5, -13.5])
    expect(offsets.map(({ matrix }) => matrix[0]![0])).toEqual([257, 253.5, 251.5])
    expect(fitAffine(SIX, measured)!.matrix.map((row, i) => row[i])).toEqual([257, 253.5, 251.5])
  })

  it('recovers twelve parameters from six exact faces', () => {
    const s: Matrix3 = [1.02, 0.01, -0.005, 0, 0.98, 0.02, 0, 0, 1.01]
    const b = [0.03, -0.05, 0.08]
    const measured = SIX.map((t) =>
      [0, 1, 2].map(
        (i) => s[3 * i]! * t[0]! + s[3 * i + 1]! * t[1]! + s[3 * i + 2]! * t[2]! + b[i]!,
      ),
    )
    const fit = fitAffine(SIX, measured)!
    for (const [i, value] of s.entries()) expect(fit.matrix.flat()[i]).toBeCloseTo(value, 12)
    for (const [i, value] of b.entries()) expect(fit.offset[i]).toBeCloseTo(value, 12)
    const inverse = invert3(s)!
    const expected = [
      0.980392157, -0.010004002, 0.005051526, 0, 1.020408163, -0.020206102, 0, 0, 0.99009901,
    ]
    for (const [i, value] of expected.entries()) expect(inverse[i]).toBeCloseTo(value, 9)
    const raw = [0.5 - b[0]!, 0.5 - b[1]!, 0.75 - b[2]!]
    const corrected = [0, 1, 2].map(
      (i) =>
        inverse[3 * i]! * raw[0]! + inverse[3 * i + 1]! * raw[1]! + inverse[3 * i + 2]! * raw[2]!,
    )
    for (const [i, value] of [0.458666635, 0.547686401, 0.663366337].entries()) {
      expect(corrected[i]).toBeCloseTo(value, 9)
    }
  })

  it('refuses poses that do not determine the sensor', () => {
    expect(fitAffine(SIX.slice(0, 4), SIX.slice(0, 4))).toBeNull()
  })
})

describe('calibration of a board at the bench', () => {
  const target = defaultTarget()
  const style = { units: 'count' as const, timed: true }
  const offset = FAULTS.find(({ name }) => name === 'accelerometer-offset')!

  it('finds the offsets that the simulated sensor was given, to a few counts', () => {
    const known = {
      ...offset,
      sensor: (sensor: { accelZeroG: number[]; gyroZeroDps: number[] }) => {
        sensor.accelZeroG = [0.1, -0.2, 0.3]
        sensor.gyroZeroDps = [3, -4, 5]
      },
    }
    const parts = simulateBench(target, style, known as typeof offset, createRandom(5))
    const result = calibrate(parts, target)
    if (!result.ok) throw new Error(result.message)
    const { stored, crossAxis } = result.value
    const expected = [0.1, -0.2, 0.3].map((g) => g / 0.000244)
    // Faces set by hand, up to 6° off, move the offset by half the difference of their cosines: 3 mg.
    for (const [i, count] of expected.entries())
      expect(Math.abs(stored.zero[i]! - count)).toBeLessThan(15)
    expect(stored.zero.slice(3).map((count) => Math.round(count * 0.035))).toEqual([3, -4, 5])
    expect(stored.zero.every(Number.isInteger)).toBe(true)
    expect(stored.correctionQ14.every(Number.isInteger)).toBe(true)
    expect(Math.abs(stored.correctionQ14[0]! / CORRECTION_ONE - 1)).toBeLessThan(0.05)
    expect(crossAxis).toBeLessThan(0.15)
  })

  it('refuses what the board check has to mend first', () => {
    const parts = simulateBench(target, style, null, createRandom(6))
    const without = parts.filter(({ step }) => step !== 'face-y')
    expect(calibrate(without, target)).toMatchObject({ ok: false, code: 'calibrate/faces' })
    const mirrored = FAULTS.find(({ name }) => name === 'axes-mirrored')!
    const bad = simulateBench(target, style, mirrored, createRandom(7))
    expect(calibrate(bad, target)).toMatchObject({ ok: false, code: 'calibrate/axes' })
    const range = FAULTS.find(({ name }) => name === 'accelerometer-range')!
    const scaled = simulateBench(target, style, range, createRandom(8))
    expect(calibrate(scaled, target)).toMatchObject({ ok: false, code: 'calibrate/scale' })
  })
})
