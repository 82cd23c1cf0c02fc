import { STANDARD_GRAVITY_MPS2 } from '../model/sample'
import { HAND_AXES, type HandAxis, type Jet } from './stroke'

export type Vector3 = [number, number, number]
/** Row-major; columns are the body's axes in the world. */
export type Rotation = [number, number, number, number, number, number, number, number, number]

/** Pose of the hand and its derivatives, absolute: the held pose is already in it. m and rad. */
export type HandState = Record<HandAxis, Jet>

/**
 * How the hand holds the prop. Prop axes are the phone's: y along the handle, away from the hand
 * (top of the phone), z out of the screen, x to the right.
 */
export interface Grip {
  /** Turn of the prop about its long axis, deg; 0: screen faces up and back to the person. */
  rollDeg: number
  /** Angle of the prop's long axis above that of the hand, deg. */
  tiltDeg: number
  /** Angle of the prop's long axis to the left of that of the hand, deg. */
  skewDeg: number
}

/** Where the sensor sits and how the prop is held: all it takes from the hand to the sensor. */
export interface SensorPlace {
  grip: Grip
  /** From the grip point to the sensor, prop axes, m. */
  leverM: Vector3
}

/** What an ideal sensor reads: prop axes, m/s² (gravity included), rad/s. */
export interface SensedMotion {
  specificForce: Vector3
  angularRate: Vector3
}

export function multiplyRotations(a: Rotation, b: Rotation): Rotation {
  const at = (row: number, column: number) =>
    a[3 * row]! * b[column]! + a[3 * row + 1]! * b[3 + column]! + a[3 * row + 2]! * b[6 + column]!
  return [at(0, 0), at(0, 1), at(0, 2), at(1, 0), at(1, 1), at(1, 2), at(2, 0), at(2, 1), at(2, 2)]
}

export function rotate(m: Rotation, v: Vector3): Vector3 {
  return [
    m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
    m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
    m[6] * v[0] + m[7] * v[1] + m[8] * v[2],
  ]
}

/** By the transpose: from the world to the body. */
export function rotateBack(m: Rotation, v: Vector3): Vector3 {
  return [
    m[0] * v[0] + m[3] * v[1] + m[6] * v[2],
    m[1] * v[0] + m[4] * v[1] + m[7] * v[2],
    m[2] * v[0] + m[5] * v[1] + m[8] * v[2],
  ]
}

export function cross(a: Vector3, b: Vector3): Vector3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

export function add(a: Vector3, b: Vector3): Vector3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

/** Rz(yaw) · Rx(pitch) · Ry(roll), rad. */
export function attitudeFromAngles(yaw: number, pitch: number, roll: number): Rotation {
  const [cy, sy] = [Math.cos(yaw), Math.sin(yaw)]
  const [cp, sp] = [Math.cos(pitch), Math.sin(pitch)]
  const [cr, sr] = [Math.cos(roll), Math.sin(roll)]
  return [
    cy * cr - sy * sp * sr,
    -sy * cp,
    cy * sr + sy * sp * cr,
    sy * cr + cy * sp * sr,
    cy * cp,
    sy * sr - cy * sp * cr,
    -cp * sr,
    sp,
    cp * cr,
  ]
}

/** From prop axes to hand axes: turn about the hand's z, then x, then the prop's long axis. */
export function gripRotation(grip: Grip): Rotation {
  const radians = Math.PI / 180
  return attitudeFromAngles(grip.skewDeg * radians, grip.tiltDeg * radians, grip.rollDeg * radians)
}

/** Angular rate and its derivative in hand axes, from the three angles and their derivatives. */
export function bodyRates(hand: HandState): { rate: Vector3; accel: Vector3 } {
  const { yaw, pitch, roll } = hand
  const [cp, sp] = [Math.cos(pitch.value), Math.sin(pitch.value)]
  const [cr, sr] = [Math.cos(roll.value), Math.sin(roll.value)]
  // Rate before the roll: pitch about x, yaw about the vertical seen from the pitched hand.
  const before: Vector3 = [pitch.rate, sp * yaw.rate, cp * yaw.rate]
  const beforeAccel: Vector3 = [
    pitch.accel,
    sp * yaw.accel + cp * pitch.rate * yaw.rate,
    cp * yaw.accel - sp * pitch.rate * yaw.rate,
  ]
  const rate: Vector3 = [
    cr * before[0] - sr * before[2],
    before[1] + roll.rate,
    sr * before[0] + cr * before[2],
  ]
  const accel: Vector3 = [
    cr * beforeAccel[0] - sr * beforeAccel[2] - roll.rate * (sr * before[0] + cr * before[2]),
    beforeAccel[1] + roll.accel,
    sr * beforeAccel[0] + cr * beforeAccel[2] + roll.rate * (cr * before[0] - sr * before[2]),
  ]
  return { rate, accel }
}

/** Acceleration of a point at `lever` on a turning body: α × r + ω × (ω × r), body axes. */
export function leverAcceleration(rate: Vector3, accel: Vector3, lever: Vector3): Vector3 {
  return add(cross(accel, lever), cross(rate, cross(rate, lever)))
}

function handAttitude({ yaw, pitch, roll }: HandState): Rotation {
  return attitudeFromAngles(yaw.value, pitch.value, roll.value)
}

/** Attitude of the prop: prop axes to world. */
export function propAttitude(hand: HandState, grip: Grip): Rotation {
  return multiplyRotations(handAttitude(hand), gripRotation(grip))
}

/**
 * Specific force f = Rᵀ (a - g) and angular rate at the sensor's place, where a is the
 * acceleration of the grip point plus that of the lever.
 */
export function senseMotion(hand: HandState, place: SensorPlace): SensedMotion {
  const toHand = gripRotation(place.grip)
  const rates = bodyRates(hand)
  const angularRate = rotateBack(toHand, rates.rate)
  const angularAccel = rotateBack(toHand, rates.accel)
  const gripForce = rotateBack(handAttitude(hand), [
    hand.x.accel,
    hand.y.accel,
    hand.z.accel + STANDARD_GRAVITY_MPS2,
  ])
  const lever = leverAcceleration(angularRate, angularAccel, place.leverM)
  return { specificForce: add(rotateBack(toHand, gripForce), lever), angularRate }
}

/** A hand that does not move, at the given offsets, m and rad. */
export function stillHand(offsets: Partial<Record<HandAxis, number>> = {}): HandState {
  const state = {} as HandState
  for (const axis of HAND_AXES) state[axis] = { value: offsets[axis] ?? 0, rate: 0, accel: 0 }
  return state
}
