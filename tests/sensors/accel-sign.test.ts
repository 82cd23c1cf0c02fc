import { Quaternion } from 'quaternion'
import { describe, expect, it } from 'vitest'
import {
  gravityFromOrientation,
  signFromLyingFlat,
  signFromOrientation,
} from '../../src/sensors/accel-sign'
import { OrientationCheck } from '../../src/sensors/orientation-check'
import { resting, samplesOf } from './samples'

describe('the lay-flat step', () => {
  it('finds +1 where a flat phone reads +9.8 on z, as W3C axes say', () => {
    expect(signFromLyingFlat(resting(0, 0.1, 9.8))).toEqual({ ok: true, value: 1 })
  })

  it('finds -1 where a flat phone reads -9.8 on z', () => {
    expect(signFromLyingFlat(resting(0, -0.1, -9.8))).toEqual({ ok: true, value: -1 })
  })

  it('accepts 14 degrees of tilt and refuses 16, saying how many', () => {
    const tilted = (deg: number) =>
      resting(0, 9.8 * Math.sin((deg * Math.PI) / 180), 9.8 * Math.cos((deg * Math.PI) / 180))
    expect(signFromLyingFlat(tilted(14))).toEqual({ ok: true, value: 1 })
    const refused = signFromLyingFlat(tilted(16))
    expect(refused).toMatchObject({ ok: false, code: 'accel-sign/not-flat' })
    expect(refused).toMatchObject({ message: expect.stringContaining('16 degrees') })
  })

  it('refuses a phone that stands upright', () => {
    expect(signFromLyingFlat(resting(0, 9.8, 0))).toMatchObject({ code: 'accel-sign/not-flat' })
  })

  it('refuses a phone that is shaken, or turned slowly on the table', () => {
    const shaken = samplesOf(60, (i) => [2 * Math.sin(i), 0, 9.8, 0, 0, 0])
    const turned = samplesOf(60, (i) => [0, 0, 9.8, 0, 0, 20 * Math.sin(i / 20)])
    expect(signFromLyingFlat(shaken)).toMatchObject({ code: 'rest/moving' })
    expect(signFromLyingFlat(turned)).toMatchObject({ code: 'rest/moving' })
  })

  it('is not misled by the constant offset of a gyroscope', () => {
    const offset = samplesOf(60, () => [0, 0, -9.8, 3, -5, 2])
    expect(signFromLyingFlat(offset)).toEqual({ ok: true, value: -1 })
  })

  it('refuses half a second of samples and no samples', () => {
    expect(signFromLyingFlat(resting(0, 0, 9.8, 30))).toMatchObject({ code: 'rest/too-short' })
    expect(signFromLyingFlat([])).toMatchObject({ code: 'rest/too-short' })
  })

  it('refuses a sensor whose gravity is no gravity', () => {
    expect(signFromLyingFlat(resting(0, 0, 1))).toMatchObject({ code: 'rest/not-gravity' })
  })
})

describe('the check against the orientation', () => {
  it('expects gravity where the specification puts it', () => {
    // W3C Device Orientation and Motion: flat with the screen up reads +g on z; on its bottom edge
    // (beta 90) +g on y; on its left edge (gamma 90) -g on x.
    const close = (beta: number, gamma: number, expected: number[]) =>
      gravityFromOrientation(beta, gamma).forEach((value, axis) => {
        expect(value).toBeCloseTo(expected[axis]!, 12)
      })
    close(0, 0, [0, 0, 1])
    close(90, 0, [0, 1, 0])
    close(0, 90, [-1, 0, 0])
    close(180, 0, [0, 0, -1])
  })

  it('agrees with a rotation Z-X-Y by quaternions, whatever alpha is', () => {
    const rad = Math.PI / 180
    for (const [alpha, beta, gamma] of [
      [10, 20, 30],
      [200, -70, -45],
      [355, 130, 80],
    ] as const) {
      const turn = Quaternion.fromEuler(alpha * rad, beta * rad, gamma * rad, 'ZXY')
      const up = turn.inverse().rotateVector([0, 0, 1]) as [number, number, number]
      gravityFromOrientation(beta, gamma).forEach((value, axis) => {
        expect(value).toBeCloseTo(up[axis]!, 12)
      })
    }
  })

  it('finds both signs in any pose and nothing across gravity', () => {
    const [x, y, z] = gravityFromOrientation(35, -20)
    expect(signFromOrientation([9.8 * x, 9.8 * y, 9.8 * z], 35, -20)).toBe(1)
    expect(signFromOrientation([-9.8 * x, -9.8 * y, -9.8 * z], 35, -20)).toBe(-1)
    expect(signFromOrientation([9.8 * z, 9.8 * y, -9.8 * x], 35, -20)).toBe(0)
    expect(signFromOrientation([0, 0, 0], 35, -20)).toBe(0)
  })

  it('answers in passing once the phone has rested, not while it moves', () => {
    const moving = new OrientationCheck()
    const still = new OrientationCheck()
    const answers = { moving: new Set<number>(), still: new Set<number>() }
    for (const sample of samplesOf(120, (i) => [5 * Math.sin(i / 3), 0, -9.8, 0, 0, 0])) {
      moving.addAngles(sample.tMs, 0, 0)
      answers.moving.add(moving.addSample(sample))
    }
    for (const sample of resting(0, 0, -9.8, 120)) {
      still.addAngles(sample.tMs, 0, 0)
      answers.still.add(still.addSample(sample))
    }
    expect([...answers.moving]).toEqual([0])
    expect([...answers.still].sort()).toEqual([-1, 0])
  })

  it('does not compare with angles of long ago', () => {
    const check = new OrientationCheck()
    check.addAngles(0, 0, 0)
    const answers = resting(0, 0, 9.8, 120).map((sample) => check.addSample(sample))
    expect(new Set(answers)).toEqual(new Set([0]))
  })
})
