import { describe, expect, test } from 'vitest'
import { AttitudeFilter } from '../../../src/shared/attitude/attitude-filter'
import { angleOf, rotate } from '../../../src/shared/attitude/quaternion'
import { isStill, stillStretches } from '../../../src/shared/attitude/stillness'
import { trackAttitude } from '../../../src/shared/attitude/track-attitude'
import { createRandom } from '../../../src/shared/statistics/random'
import { evenTimes, sampled } from '../conditioning/samples'

type Six = [number, number, number, number, number, number]
const degrees = (radians: number) => (radians * 180) / Math.PI

describe('integration', () => {
  test('half a period of 180 sin(2πt) deg/s at 100 Hz is 57.27692871°, as the trapezoid gives', () => {
    // Free fall: no gravity to lean on.
    const block = sampled(evenTimes(100, 0.5), (t) => [
      0,
      0,
      0,
      180 * Math.sin(2 * Math.PI * t),
      0,
      0,
    ])
    expect(degrees(angleOf(trackAttitude(block, 1).at(-1)!))).toBeCloseTo(57.27692871, 4)
  })

  test('at rest, up is where gravity says, for any pose and for an inverted accelerometer', () => {
    const random = createRandom(2)
    for (let i = 0; i < 50; i++) {
      const a = [random.normal(), random.normal(), random.normal()]
      const g = 9.80665 / Math.hypot(...a)
      const reading = [a[0]! * g, a[1]! * g, a[2]! * g] as const
      for (const sign of [1, -1] as const) {
        const shown = reading.map((v) => sign * v) as [number, number, number]
        const block = sampled(evenTimes(60, 1), () => [...shown, 0, 0, 0] as Six)
        const up = rotate(trackAttitude(block, sign).at(-1)!, reading)
        expect(up[2]).toBeCloseTo(9.80665, 4)
      }
    }
  })

  test('gravity takes back the tilt that a bias of 3 deg/s makes; heading drifts freely', () => {
    const still: Six = [0, 0, 9.80665, 3, 0, 3]
    const attitudes = trackAttitude(
      sampled(evenTimes(60, 30), () => still),
      1,
    )
    const up = rotate(attitudes.at(-1)!, [0, 0, 1])
    // Balance: bias × time constant = 3 deg/s × 2 s.
    expect(degrees(Math.acos(up[2]))).toBeLessThan(6.5)
    expect(degrees(Math.acos(up[2]))).toBeGreaterThan(5)
    const forward = rotate(attitudes.at(-1)!, [0, 1, 0])
    expect(degrees(Math.atan2(forward[0], forward[1]))).not.toBeCloseTo(0, 0)
  })

  test('a strong push is not taken for gravity', () => {
    const filter = new AttitudeFilter([0, 0, 1], [0, 0, 0])
    for (let i = 0; i < 30; i++) filter.push(1 / 60, [12, 0, 9.8], [0, 0, 0])
    expect(angleOf(filter.attitude)).toBe(0)
  })

  test('without gyroscope gravity alone turns the attitude within half a second', () => {
    const block = sampled(evenTimes(60, 1.5), (t) =>
      t < 0.5 ? [0, 0, 9.8, 0, 0, 0] : [9.8, 0, 0, 0, 0, 0],
    )
    const up = rotate(trackAttitude(block, 1)[60]!, [1, 0, 0])
    expect(up[2]).toBeGreaterThan(0.95)
  })

  test('nothing recorded has no attitude, and holes are not integrated across', () => {
    expect(trackAttitude({ tMs: new Float64Array(), values: new Float32Array() }, 1)).toEqual([])
    const block = sampled([0, 17, 10_017], () => [0, 0, 0, 10, 0, 0])
    expect(degrees(angleOf(trackAttitude(block, 1).at(-1)!))).toBeLessThan(3)
  })
})

describe('stillness', () => {
  test('acceleration spreads as the sliding sample deviations 0.011 .. 0.007 of w = 5 say', () => {
    const length = [9.8, 9.81, 9.79, 9.8, 9.82, 10.4, 11.2, 9, 8.7, 9.9, 9.8, 9.81, 9.8, 9.79, 9.8]
    const block = sampled(
      length.map((_, i) => 20 * i),
      (t) => [0, 0, length[Math.round(t * 50)]!, 0, 0, 0],
    )
    // Deviations: .011 .266 .615 .816 1.021 1.021 .973 .552 .506 .045 .007, limit 0.25.
    const still = Array.from({ length: 11 }, (_, i) => isStill(block, i, i + 5))
    expect(still).toEqual([true, ...new Array(8).fill(false), true, true])
  })

  test('turning slowly on the spot is not still', () => {
    expect(
      isStill(
        sampled(evenTimes(60, 1), () => [0, 0, 9.8, 0, 20, 0]),
        0,
        60,
      ),
    ).toBe(false)
  })

  test('stretches before and after a movement are found, short blocks have none', () => {
    const block = sampled(evenTimes(60, 3), (t) =>
      t > 1 && t < 2 ? [3 * Math.sin(20 * t), 0, 9.8, 90, 0, 0] : [0, 0, 9.8, 0, 0, 0],
    )
    const stretches = stillStretches(block)
    expect(stretches).toHaveLength(2)
    expect(block.tMs[stretches[0]!.to - 1]!).toBeGreaterThan(900)
    expect(block.tMs[stretches[0]!.to - 1]!).toBeLessThan(1100)
    expect(block.tMs[stretches[1]!.from]!).toBeGreaterThan(1900)
    expect(stillStretches(sampled([0, 10], () => [0, 0, 9.8, 0, 0, 0]))).toEqual([])
  })
})
