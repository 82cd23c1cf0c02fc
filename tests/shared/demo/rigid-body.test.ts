import { describe, expect, it } from 'vitest'
import { HandMotion } from '../../../src/shared/demo/hand-motion'
import { DEMO_MOVEMENTS, performMovement } from '../../../src/shared/demo/movements'
import {
  attitudeFromAngles,
  type Grip,
  type HandState,
  leverAcceleration,
  multiplyRotations,
  propAttitude,
  type Rotation,
  rotate,
  rotateBack,
  type SensorPlace,
  senseMotion,
  stillHand,
  type Vector3,
} from '../../../src/shared/demo/rigid-body'
import { drawTesterStyle } from '../../../src/shared/demo/tester-style'
import { Tremor } from '../../../src/shared/demo/tremor'
import { STANDARD_GRAVITY_MPS2 } from '../../../src/shared/model/sample'
import { createRandom } from '../../../src/shared/statistics/random'

const DEGREE = Math.PI / 180
const PLAIN_GRIP: Grip = { rollDeg: 0, tiltDeg: 0, skewDeg: 0 }
const OFFSET: SensorPlace = {
  grip: { rollDeg: 41, tiltDeg: -7, skewDeg: 5 },
  leverM: [0.004, 0.085, 0.012],
}

const length = (v: Vector3) => Math.hypot(v[0], v[1], v[2])

/** Rotation by a constant rate for a time (Rodrigues). */
function turn(rate: Vector3, dtS: number): Rotation {
  const angle = length(rate) * dtS
  if (angle === 0) return [1, 0, 0, 0, 1, 0, 0, 0, 1]
  const [x, y, z] = rate.map((part) => part / length(rate)) as Vector3
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  const t = 1 - c
  return [
    c + t * x * x,
    t * x * y - s * z,
    t * x * z + s * y,
    t * x * y + s * z,
    c + t * y * y,
    t * y * z - s * x,
    t * x * z - s * y,
    t * y * z + s * x,
    c + t * z * z,
  ]
}

/** A hand that performs every movement in a row with tremor; time must go forward. */
function busyHand(seed: number): HandMotion {
  const random = createRandom(seed)
  const style = drawTesterStyle(2, random)
  const hand = new HandMotion(style.heldPitchDeg, new Tremor(1, random))
  for (const [index, movement] of DEMO_MOVEMENTS.entries()) {
    const strokes = performMovement(movement, style, random)
    hand.add(strokes.map((stroke) => ({ ...stroke, startS: stroke.startS + 1.4 * index })))
  }
  return hand
}

function sensorPosition(hand: HandState, place: SensorPlace): Vector3 {
  const lever = rotate(propAttitude(hand, place.grip), place.leverM)
  return [hand.x.value + lever[0], hand.y.value + lever[1], hand.z.value + lever[2]]
}

describe('a sensor on a rigid body', () => {
  it('reads one g and no turning when the hand is still, whatever the pose and grip', () => {
    for (const pitch of [-1.2, 0, 0.5, 1.5]) {
      const motion = senseMotion(stillHand({ pitch, yaw: 2, roll: -0.8, z: 1 }), OFFSET)
      expect(length(motion.specificForce)).toBeCloseTo(STANDARD_GRAVITY_MPS2, 12)
      expect(length(motion.angularRate)).toBe(0)
    }
  })

  it('reads gravity on z when flat, on y when the handle points up, on -x when rolled right', () => {
    const read = (pitch: number, rollDeg: number) =>
      senseMotion(stillHand({ pitch: pitch * DEGREE }), {
        grip: { ...PLAIN_GRIP, rollDeg },
        leverM: [0, 0, 0],
      }).specificForce
    const g = STANDARD_GRAVITY_MPS2
    const expected: [Vector3, Vector3][] = [
      [read(0, 0), [0, 0, g]],
      [read(90, 0), [0, g, 0]],
      [read(0, 90), [-g, 0, 0]],
      [read(30, 0), [0, g / 2, (g * Math.sqrt(3)) / 2]],
    ]
    for (const [got, want] of expected) {
      for (const axis of [0, 1, 2]) expect(got[axis]).toBeCloseTo(want[axis], 10)
    }
  })

  it('reads no specific force in free fall, tumbling included, at the point that falls', () => {
    const hand = stillHand({ yaw: 0.3, pitch: 1, roll: -0.4 })
    hand.z.accel = -STANDARD_GRAVITY_MPS2
    hand.pitch.rate = 5
    hand.roll.rate = -3
    const motion = senseMotion(hand, { grip: OFFSET.grip, leverM: [0, 0, 0] })
    expect(length(motion.specificForce)).toBeLessThan(1e-12)
    expect(length(motion.angularRate)).toBeGreaterThan(1)
  })

  it.each([
    // ω² r, worked by hand from the definition.
    [250, 0.05, 0.952],
    [500, 0.1, 7.615],
    [1000, 0.1, 30.46],
    [720, 0.15, 23.69],
  ])(
    'turning at %d deg/s with a lever of %d m reads %d m/s² towards the axis',
    (dps, r, expected) => {
      const hand = stillHand()
      hand.yaw.rate = dps * DEGREE
      const motion = senseMotion(hand, { grip: PLAIN_GRIP, leverM: [0, r, 0] })
      const digits = expected < 10 ? 3 : 2
      expect(-motion.specificForce[1]).toBeCloseTo(expected, digits)
      expect(motion.specificForce[2]).toBeCloseTo(STANDARD_GRAVITY_MPS2, 12)
      expect(motion.angularRate[2] / DEGREE).toBeCloseTo(dps, 9)
    },
  )

  it('that speeds up reads the tangential acceleration α r', () => {
    expect(leverAcceleration([0, 0, 0], [0, 0, 20], [0, 0.1, 0])).toEqual([-2, 0, 0])
  })

  it('gives rates whose integral is the attitude, through every movement', () => {
    const hand = busyHand(5)
    const dtS = 1 / 2000
    let attitude = propAttitude(busyHand(5).at(0), OFFSET.grip)
    let worst = 0
    for (let index = 0; index < 12 * 2000; index++) {
      // Midpoint rule: the rate in the middle of the interval turns the body through it.
      const middle = senseMotion(hand.at((index + 0.5) * dtS), OFFSET).angularRate
      attitude = multiplyRotations(attitude, turn(middle, dtS))
      if (index % 50 === 49) {
        const truth = propAttitude(hand.at((index + 1) * dtS), OFFSET.grip)
        for (let k = 0; k < 9; k++) worst = Math.max(worst, Math.abs(attitude[k] - truth[k]))
      }
    }
    expect(worst).toBeLessThan(1e-4)
  })

  it('reads the second difference of its own path, gravity taken off, through every movement', () => {
    const hand = busyHand(6)
    const h = 1e-4
    for (let timeS = 0.05; timeS < 12; timeS += 0.037) {
      const states = [timeS - h, timeS, timeS + h].map((t) => hand.at(t))
      const [before, here, after] = states.map((state) => sensorPosition(state, OFFSET))
      const accel = [0, 1, 2].map((k) => (after[k] - 2 * here[k] + before[k]) / (h * h))
      const attitude = propAttitude(states[1], OFFSET.grip)
      const expected = rotateBack(attitude, [accel[0], accel[1], accel[2] + STANDARD_GRAVITY_MPS2])
      const got = senseMotion(states[1], OFFSET).specificForce
      for (const k of [0, 1, 2]) expect(Math.abs(got[k] - expected[k])).toBeLessThan(2e-2)
    }
  })

  it('has proper rotations: R Rᵀ = 1', () => {
    const r = attitudeFromAngles(0.7, -1.1, 2.3)
    const columns = [0, 1, 2].map((k) => rotateBack(r, [r[k], r[3 + k], r[6 + k]]))
    for (const [k, column] of columns.entries()) {
      for (const j of [0, 1, 2]) expect(column[j]).toBeCloseTo(j === k ? 1 : 0, 12)
    }
  })
})
