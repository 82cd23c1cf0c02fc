import { describe, expect, it } from 'vitest'
import { HandMotion } from '../../../src/shared/demo/hand-motion'
import {
  DEMO_MOVEMENTS,
  type DemoMovement,
  performMovement,
} from '../../../src/shared/demo/movements'
import { lanternIn } from '../../../src/shared/demo/prop'
import { type SensedMotion, senseMotion } from '../../../src/shared/demo/rigid-body'
import { HAND_AXES, lastEndS } from '../../../src/shared/demo/stroke'
import {
  drawTesterStyle,
  PLAIN_STYLE,
  type TesterStyle,
} from '../../../src/shared/demo/tester-style'
import { STANDARD_GRAVITY_MPS2 } from '../../../src/shared/model/sample'
import { createRandom } from '../../../src/shared/statistics/random'

const RATE_HZ = 240

function sensed(movement: DemoMovement, style: TesterStyle, seed: number): SensedMotion[] {
  const strokes = performMovement(movement, style, createRandom(seed))
  const hand = new HandMotion(style.heldPitchDeg, null)
  hand.add(strokes)
  const place = lanternIn(style)
  const count = Math.ceil(lastEndS(strokes) * RATE_HZ) + 1
  return Array.from({ length: count }, (_, index) => senseMotion(hand.at(index / RATE_HZ), place))
}

const dps = (motion: SensedMotion) => (Math.hypot(...motion.angularRate) * 180) / Math.PI

describe('demo movements', () => {
  it('are eight with names of their own', () => {
    expect(DEMO_MOVEMENTS).toHaveLength(8)
    expect(new Set(DEMO_MOVEMENTS.map(({ name }) => name)).size).toBe(8)
  })

  it('come back to the held pose, whoever performs them', () => {
    for (const movement of DEMO_MOVEMENTS) {
      for (let index = 0; index < 6; index++) {
        const random = createRandom(index)
        const strokes = performMovement(movement, drawTesterStyle(index, random), random)
        for (const axis of HAND_AXES) {
          const left = strokes
            .filter((stroke) => stroke.kind === 'step' && stroke.axis === axis)
            .reduce((sum, stroke) => sum + stroke.amount, 0)
          expect(Math.abs(left)).toBeLessThan(1e-9)
        }
      }
    }
  })

  it('of a left hand are the mirror image of those of a right hand', () => {
    // Mirrored in the plane of x = 0, forces keep y and z, rates (axial vectors) keep x alone.
    const right = drawTesterStyle(2, createRandom(8))
    const left: TesterStyle = { ...right, hand: 'left' }
    for (const movement of DEMO_MOVEMENTS) {
      const [a, b] = [sensed(movement, right, 4), sensed(movement, left, 4)]
      expect(a.length).toBe(b.length)
      for (const [index, motion] of a.entries()) {
        const mirrored = b[index]
        const signs = [-1, 1, 1]
        for (const k of [0, 1, 2]) {
          expect(mirrored.specificForce[k]).toBeCloseTo(signs[k] * motion.specificForce[k], 9)
          expect(mirrored.angularRate[k]).toBeCloseTo(-signs[k] * motion.angularRate[k], 9)
        }
      }
    }
  })

  it.each(DEMO_MOVEMENTS.map((movement) => [movement.id, movement] as const))(
    '%s has the strength and length of a hand movement',
    (_, movement) => {
      for (let seed = 0; seed < 20; seed++) {
        const motions = sensed(movement, PLAIN_STYLE, seed)
        const peakDps = Math.max(...motions.map(dps))
        const rest = motions[0].specificForce
        const peakAccel = Math.max(
          ...motions.map(({ specificForce: f }) =>
            Math.hypot(f[0] - rest[0], f[1] - rest[1], f[2] - rest[2]),
          ),
        )
        expect(peakDps).toBeGreaterThan(50)
        expect(peakDps).toBeLessThan(900)
        expect(peakAccel).toBeGreaterThan(4)
        expect(peakAccel).toBeLessThan(45)
        const lengthS = motions.length / RATE_HZ
        expect(lengthS).toBeGreaterThan(0.5)
        expect(lengthS).toBeLessThan(2.2)
      }
    },
  )

  it('never halt for longer than 120 ms before they are over, for any tester', () => {
    // Energy as the segmenter has it, in deg/s: turning summed over the axes, and the change of
    // force within 40 ms at 125 deg/s for 1 g. By default 60 starts a movement and 25 ends it.
    const lag = Math.round(0.04 * RATE_HZ)
    const sum = (values: number[]) => values.reduce((total, value) => total + Math.abs(value), 0)
    for (const movement of DEMO_MOVEMENTS) {
      for (let seed = 0; seed < 48; seed++) {
        const style = drawTesterStyle(seed % 6, createRandom(Math.floor(seed / 6)))
        const motions = sensed(movement, style, seed)
        const energy = motions.map((motion, index) => {
          const before = motions[Math.max(0, index - lag)].specificForce
          const change = sum(motion.specificForce.map((force, k) => force - before[k]))
          return (sum(motion.angularRate) * 180) / Math.PI + (125 * change) / STANDARD_GRAVITY_MPS2
        })
        const strong = energy.flatMap((value, index) => (value >= 60 ? [index] : []))
        const moving = energy.flatMap((value, index) =>
          value >= 25 && index >= strong[0] && index <= strong[strong.length - 1] ? [index] : [],
        )
        const halts = moving.slice(1).map((at, index) => (1000 * (at - moving[index])) / RATE_HZ)
        expect(Math.max(...halts), `${movement.id} ${seed}`).toBeLessThan(120)
      }
    }
  })

  it('differ between performances of the same tester', () => {
    const [ring] = DEMO_MOVEMENTS.filter(({ id }) => id === 'ring')
    expect(sensed(ring, PLAIN_STYLE, 1)[60]).not.toEqual(sensed(ring, PLAIN_STYLE, 2)[60])
  })
})
