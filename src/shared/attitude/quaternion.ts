import type { Matrix3 } from '../model/target'
import { cross, dot, norm, scale, type Vector3 } from './vector'

/** Unit quaternion w, x, y, z: turns vectors of the prop into vectors of the world. */
export type Quaternion = readonly [number, number, number, number]

export const NO_ROTATION: Quaternion = [1, 0, 0, 0]

/** The rotation b followed by a: Hamilton product a b. */
export function multiply(a: Quaternion, b: Quaternion): Quaternion {
  return [
    a[0] * b[0] - a[1] * b[1] - a[2] * b[2] - a[3] * b[3],
    a[0] * b[1] + a[1] * b[0] + a[2] * b[3] - a[3] * b[2],
    a[0] * b[2] - a[1] * b[3] + a[2] * b[0] + a[3] * b[1],
    a[0] * b[3] + a[1] * b[2] - a[2] * b[1] + a[3] * b[0],
  ]
}

/** The rotation back. */
export function conjugate(q: Quaternion): Quaternion {
  return [q[0], -q[1], -q[2], -q[3]]
}

export function normalise(q: Quaternion): Quaternion {
  const length = Math.hypot(q[0], q[1], q[2], q[3])
  return [q[0] / length, q[1] / length, q[2] / length, q[3] / length]
}

/** q v q*, as v + 2 w (u × v) + 2 u × (u × v) with u the vector part. */
export function rotate(q: Quaternion, v: Vector3): Vector3 {
  const u: Vector3 = [q[1], q[2], q[3]]
  const uv = cross(u, v)
  const uuv = cross(u, uv)
  return [
    v[0] + 2 * (q[0] * uv[0] + uuv[0]),
    v[1] + 2 * (q[0] * uv[1] + uuv[1]),
    v[2] + 2 * (q[0] * uv[2] + uuv[2]),
  ]
}

/** Rotation about the direction of v by its length, rad (exponential map). */
export function fromRotationVector(v: Vector3): Quaternion {
  const angle = norm(v)
  // sin(a/2)/a tends to 1/2 - a²/48.
  const factor = angle < 1e-4 ? 0.5 - (angle * angle) / 48 : Math.sin(angle / 2) / angle
  return [Math.cos(angle / 2), v[0] * factor, v[1] * factor, v[2] * factor]
}

/** Shortest rotation that turns unit vector a into unit vector b; half a turn when opposite. */
export function between(a: Vector3, b: Vector3): Quaternion {
  const cosine = dot(a, b)
  if (cosine < -1 + 1e-12) {
    const side = cross(a, Math.abs(a[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0])
    const axis = scale(side, 1 / norm(side))
    return [0, axis[0], axis[1], axis[2]]
  }
  const axis = cross(a, b)
  return normalise([1 + cosine, axis[0], axis[1], axis[2]])
}

/** Angle of the rotation, 0 to π rad. */
export function angleOf(q: Quaternion): number {
  return 2 * Math.atan2(Math.hypot(q[1], q[2], q[3]), Math.abs(q[0]))
}

/** Row-major rotation matrix. */
export function toMatrix(q: Quaternion): Matrix3 {
  const [w, x, y, z] = q
  return [
    1 - 2 * (y * y + z * z),
    2 * (x * y - w * z),
    2 * (x * z + w * y),
    2 * (x * y + w * z),
    1 - 2 * (x * x + z * z),
    2 * (y * z - w * x),
    2 * (x * z - w * y),
    2 * (y * z + w * x),
    1 - 2 * (x * x + y * y),
  ]
}
