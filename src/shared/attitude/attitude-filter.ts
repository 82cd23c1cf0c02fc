import { STANDARD_GRAVITY_MPS2 } from '../model/sample'
import {
  between,
  fromRotationVector,
  multiply,
  normalise,
  type Quaternion,
  rotate,
} from './quaternion'
import { add, cross, direction, norm, scale, type Vector3 } from './vector'

const UP: Vector3 = [0, 0, 1]
const DEGREE = Math.PI / 180

/** Gravity pulls the attitude right with this time constant while the accelerometer shows only it. */
const ANCHOR_S = 2
/** The same for a phone without gyroscope, where gravity is all there is. */
const ANCHOR_WITHOUT_GYRO_S = 0.12
/** Gravity is trusted less the more the reading's length is off g, and not at all from this share on. */
const TRUST_LIMIT = 0.15

/**
 * Attitude of the prop in a world whose z axis points up: the gyroscope integrated by the trapezoid
 * rule, with gravity as anchor. A complementary filter on rotations (after Mahony, Hamel and
 * Pflimlin, IEEE Trans. Autom. Control 53(5), 2008, without bias estimation). Heading is free: it
 * starts where it starts and drifts with the gyroscope's bias.
 */
export class AttitudeFilter {
  #attitude: Quaternion
  #lastRate: Vector3
  readonly #gain: number

  /** up: the accelerometer's reading at rest, any length; hasGyro false leans on gravity instead. */
  constructor(up: Vector3, rateDps: Vector3, hasGyro = true) {
    this.#attitude = between(direction(up, UP), UP)
    this.#lastRate = rateDps
    this.#gain = 1 / (hasGyro ? ANCHOR_S : ANCHOR_WITHOUT_GYRO_S)
  }

  /** Prop to world. */
  get attitude(): Quaternion {
    return this.#attitude
  }

  /** Next sample, dtSeconds after the one before: m/s² with gravity included, deg/s. */
  push(dtSeconds: number, accelMps2: Vector3, rateDps: Vector3): Quaternion {
    const meanRate = scale(add(this.#lastRate, rateDps), 0.5 * DEGREE * dtSeconds)
    this.#lastRate = rateDps
    const turned = multiply(this.#attitude, fromRotationVector(meanRate))
    this.#attitude = normalise(this.#anchored(turned, dtSeconds, accelMps2))
    return this.#attitude
  }

  #anchored(attitude: Quaternion, dtSeconds: number, accelMps2: Vector3): Quaternion {
    const length = norm(accelMps2)
    const excess = Math.abs(length / STANDARD_GRAVITY_MPS2 - 1)
    const trust = Math.max(0, 1 - excess / TRUST_LIMIT)
    if (trust === 0) return attitude
    const shown = rotate(attitude, scale(accelMps2, 1 / length))
    const share = 1 - Math.exp(-this.#gain * trust * dtSeconds)
    return multiply(fromRotationVector(scale(cross(shown, UP), share)), attitude)
  }
}
