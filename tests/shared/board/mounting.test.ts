import { describe, expect, it } from 'vitest'
import { bestLag, correlationAt } from '../../../src/shared/board/mounting/correlation'
import { findMounting } from '../../../src/shared/board/mounting/find-mounting'
import type { MotionSeries } from '../../../src/shared/board/mounting/series'
import { svd3 } from '../../../src/shared/board/mounting/svd3'
import { apply, solveWahba, type Vec } from '../../../src/shared/board/mounting/wahba'
import { HandMotion } from '../../../src/shared/demo/hand-motion'
import { senseMotion } from '../../../src/shared/demo/rigid-body'
import type { HandAxis, Stroke } from '../../../src/shared/demo/stroke'
import { Tremor } from '../../../src/shared/demo/tremor'
import type { Matrix3 } from '../../../src/shared/model/target'
import { createRandom } from '../../../src/shared/statistics/random'
import { nearestMounting } from '../../../src/shared/target/mountings'
import {
  determinant,
  orthonormalError,
  rotationAngleDeg,
} from '../../../src/shared/target/rotation'

const pairsOf = (a: Vec[], b: Vec[]) => a.map((one, i) => ({ a: one, b: b[i]!, weight: 1 }))

function close(found: readonly number[], expected: readonly number[], digits = 8) {
  for (const [i, value] of expected.entries())
    expect(found[i], `entry ${i}`).toBeCloseTo(value, digits)
}

describe('singular values of a 3 × 3 matrix', () => {
  it('multiply back to the matrix, with orthonormal factors, also where the rank is low', () => {
    const random = createRandom(11)
    for (let trial = 0; trial < 200; trial++) {
      const m = Array.from({ length: 9 }, () => random.normal()) as Matrix3
      if (trial % 3 === 1) for (let j = 0; j < 3; j++) m[6 + j] = 2 * m[j]! - m[3 + j]!
      if (trial % 3 === 2) for (let j = 0; j < 6; j++) m[3 + j] = m[j % 3]! * (j < 3 ? 2 : -1)
      const { u, s, v } = svd3(m)
      expect(orthonormalError(u)).toBeLessThan(1e-9)
      expect(orthonormalError(v)).toBeLessThan(1e-9)
      expect(s[0] >= s[1] && s[1] >= s[2] && s[2] >= 0).toBe(true)
      const back = Array.from({ length: 9 }, (_, k) => {
        const [i, j] = [Math.floor(k / 3), k % 3]
        return [0, 1, 2].reduce((sum, n) => sum + u[3 * i + n]! * s[n]! * v[3 * j + n]!, 0)
      })
      close(back, m, 10)
    }
  })
})

describe("Wahba's problem", () => {
  it("agrees with the documented example of SciPy's Rotation.align_vectors", () => {
    const fit = solveWahba(
      pairsOf(
        [
          [0, 1, 0],
          [0, 1, 1],
          [0, 1, 1],
        ],
        [
          [1, 0, 0],
          [1, 1.1, 0],
          [1, 0.9, 0],
        ],
      ),
    )
    close(fit.rotation, [0, 0, 1, 1, 0, 0, 0, 1, 0], 12)
    expect(fit.rssd).toBeCloseTo(0.141421356237308, 12)
    close(fit.sensitivity, [0.2, 0, 0, 0, 1.5, 1, 0, 1, 1], 12)
  })

  it('gives the shortest rotation for a single pair, and says that it is not determined', () => {
    // SciPy documentation, and SciPy 1.17.1 run on the second pair (it warns there).
    const first = solveWahba(pairsOf([[1, 0, 0]], [[0, 1, 0]]))
    close(first.rotation, [0, 1, 0, -1, 0, 0, 0, 0, 1], 12)
    expect(first.certainty).toBe(0)
    const second = solveWahba(pairsOf([[0, 0, 1]], [[1, 0, 0]]))
    close(second.rotation, [0, 0, -1, 0, 1, 0, 1, 0, 0], 12)
    expect(second.certainty).toBe(0)
    const opposite = solveWahba(pairsOf([[0, 0, 1]], [[0, 0, -1]]))
    close(apply(opposite.rotation, [0, 0, -1]), [0, 0, 1], 12)
    expect(determinant(opposite.rotation)).toBeCloseTo(1, 12)
  })

  it('fits noisy axes as SciPy 1.17.1 and ml-matrix 6.15.1 do, near an axis-parallel mounting', () => {
    const fit = solveWahba(
      pairsOf(
        [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ],
        [
          [0.02, 0.99, 0.01],
          [-1.01, 0.03, -0.02],
          [0.01, 0.02, 0.98],
        ],
      ),
    )
    const c = [
      0.025083513, 0.999671903, -0.005186879, -0.99967218, 0.025056202, -0.005264998, -0.005133307,
      0.005317243, 0.999972688,
    ]
    close(fit.rotation, c)
    close(fit.singular, [1.0165027201, 0.9998048298, 0.9643715686], 9)
    expect(fit.rssd).toBeCloseTo(0.039265289815, 10)
    expect(fit.mirrored).toBe(false)
    expect(nearestMounting(fit.rotation).angleDeg).toBeCloseTo(1.4976778, 6)
  })

  it('recovers 50° about (1, 2, 3) from six directions', () => {
    const r: Matrix3 = [
      0.66830278, -0.563171626, 0.486013491, 0.665232309, 0.744848293, -0.051642965, -0.332922466,
      0.357825014, 0.872424146,
    ]
    const b: Vec[] = [
      [1, 0, 0],
      [-1, 0, 0],
      [0, 1, 0],
      [0, -1, 0],
      [0, 0, 1],
      [0, 0, -1],
    ]
    const fit = solveWahba(
      pairsOf(
        b.map((v) => apply(r, v)),
        b,
      ),
    )
    close(fit.rotation, r)
  })

  it('needs two directions only', () => {
    const fit = solveWahba(
      pairsOf(
        [
          [0, 0, 1],
          [0.6, 0, 0.8],
        ],
        [
          [1, 0, 0],
          [0.8, 0.6, 0],
        ],
      ),
    )
    close(fit.rotation, [0, 1, 0, 0, 0, 1, 1, 0, 0], 12)
    expect(fit.rssd).toBeCloseTo(0, 10)
    expect(fit.certainty).toBeGreaterThan(0)
  })

  it('reports mirrored data, where the rotation alone would look sound', () => {
    const fit = solveWahba(
      pairsOf(
        [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ],
        [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, -1],
        ],
      ),
    )
    expect(determinant(fit.rotation)).toBeCloseTo(1, 12)
    expect(fit.rssd).toBeCloseTo(2, 12)
    expect(fit.mirrored).toBe(true)
  })
})

describe('time between two logs', () => {
  it('is the lag of the largest correlation, between samples by a parabola', () => {
    const x = [0, 0, 1, 3, 2, 0, 0, 0, 0, 0]
    const y = [0, 0, 0, 0, 1, 3, 2, 0, 0, 0]
    expect([0, 1, 2, 3, 4].map((lag) => correlationAt(x, y, lag))).toEqual([2, 9, 14, 9, 2])
    expect(bestLag(x, y, 5)?.lag).toBe(2)
    const half = [0, 0, 0, 0.5, 2, 2.5, 1, 0, 0, 0]
    expect([0, 1, 2, 3].map((lag) => correlationAt(x, half, lag))).toEqual([5.5, 11.5, 11.5, 5.5])
    expect(bestLag(x, half, 5)?.lag).toBeCloseTo(1.5, 12)
  })
})

/** Phone and board on one body at different places, rates and clocks. */
function twoLogs(seed: number, mounting: Matrix3, axes: readonly HandAxis[], mirrored = false) {
  const random = createRandom(seed)
  const hand = new HandMotion(10, new Tremor(0.5, random))
  const strokes: Stroke[] = []
  for (let t = 2; t < 34; t += 3.2) {
    const axis = axes[strokes.length % axes.length]!
    const amount = random.uniform(0.8, 1.6) * (strokes.length % 2 === 0 ? 1 : -1)
    strokes.push({ kind: 'step', axis, startS: t, durationS: random.uniform(0.6, 1.4), amount })
  }
  hand.add(strokes)
  const grip = { rollDeg: 0, tiltDeg: 0, skewDeg: 0 }
  const phone: MotionSeries = sample(60, 0, { leverM: [0, 0.12, 0.01] }, null)
  const late = new HandMotion(10, new Tremor(0.5, createRandom(seed)))
  late.add(strokes)
  const board: MotionSeries = sample(104 * 1.02, 0.74, { leverM: [0, 0.02, 0] }, mounting)
  return { phone, board }

  function sample(
    rateHz: number,
    startS: number,
    place: { leverM: Vec },
    turn: Matrix3 | null,
  ): MotionSeries {
    const moving = turn === null ? hand : late
    const count = Math.floor((38 - startS) * rateHz)
    const tMs: number[] = []
    const values: number[] = []
    for (let i = 0; i < count; i++) {
      const timeS = startS + i / rateHz
      const motion = senseMotion(moving.at(timeS), { grip, ...place })
      const degrees = motion.angularRate.map((w) => (w * 180) / Math.PI) as Vec
      const force = motion.specificForce.map((f) => f / 9.80665) as Vec
      const [f, w] = turn === null ? [force, degrees] : [apply(turn, force), apply(turn, degrees)]
      if (mirrored && turn !== null) {
        f[2] = -f[2]
        w[2] = -w[2]
      }
      // The board prints its nominal rate: its clock is 2 % off, which the fit has to find.
      tMs.push(turn === null ? i * (1000 / rateHz) : i * (1000 / 104))
      for (const value of f) values.push(value + 0.003 * random.normal())
      for (const value of w) values.push(value + 1.5 + 0.1 * random.normal())
    }
    return { tMs, values }
  }
}

describe('mounting from a phone on the same prop', () => {
  const mounting: Matrix3 = [
    0.66830278, -0.563171626, 0.486013491, 0.665232309, 0.744848293, -0.051642965, -0.332922466,
    0.357825014, 0.872424146,
  ]

  it('is found within a degree, with the time between the logs and the ratio of their clocks', () => {
    const { phone, board } = twoLogs(3, mounting, ['yaw', 'pitch', 'roll'])
    const found = findMounting(phone, board)
    if (!found.ok) throw new Error(found.message)
    const { rotation, times, residualShare, gyroRatio, poses } = found.value
    expect(rotationAngleDeg(rotation, mounting)).toBeLessThan(1)
    expect(times.lagMs).toBeGreaterThan(-770)
    expect(times.lagMs).toBeLessThan(-710)
    expect(times.rateRatio).toBeCloseTo(1 / 1.02, 2)
    expect(residualShare).toBeLessThan(0.15)
    expect(gyroRatio).toBeCloseTo(1, 1)
    expect(poses).toBeGreaterThan(3)
  })

  it('is refused when all turning was about one axis, with the reason', () => {
    const { phone, board } = twoLogs(4, mounting, ['yaw'])
    // Turned about the vertical only, so gravity stays where it is as well: nothing tells the turn about it.
    const flat = findMounting(phone, board)
    expect(flat).toMatchObject({ ok: false, code: 'mounting/one-axis' })
    if (!flat.ok) expect(flat.message).toMatch(/turn the prop about its other axes/)
  })

  it('is refused when the board mirrors an axis', () => {
    const { phone, board } = twoLogs(5, mounting, ['yaw', 'pitch', 'roll'], true)
    expect(findMounting(phone, board)).toMatchObject({ ok: false, code: 'mounting/mirrored' })
  })

  it('is refused for logs of different motions', () => {
    const { phone } = twoLogs(6, mounting, ['yaw', 'pitch', 'roll'])
    const { board } = twoLogs(7, mounting, ['roll', 'yaw'])
    const result = findMounting(phone, board)
    expect(result.ok).toBe(false)
    if (!result.ok) expect(['mounting/times', 'mounting/unlike']).toContain(result.code)
  })
})
