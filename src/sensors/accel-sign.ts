import type { AccelSign } from '../shared/model/library'
import { fail, ok, type Result } from '../shared/model/result'
import { SENSOR_TROUBLE } from '../shared/words/en/sensor-trouble'
import type { MotionSample } from './motion-source'
import { restingAcceleration, type Vector3 } from './rest'

/** How far from level a phone on a table may be. */
const TILT_MAX_DEG = 15
/** Agreement needed between measured and expected gravity: within 18 degrees. */
const COSINE_MIN = 0.95

const degrees = (rad: number) => (rad * 180) / Math.PI
const radians = (deg: number) => (deg * Math.PI) / 180

/**
 * The lay-flat step: about a second of samples with the phone at rest on a table, screen up. By
 * W3C axes z then reads +9.8 m/s²; phones with the opposite sign read -9.8.
 */
export function signFromLyingFlat(samples: readonly MotionSample[]): Result<1 | -1> {
  const rest = restingAcceleration(samples)
  if (!rest.ok) return rest
  const [x, y, z] = rest.value
  const tiltDeg = degrees(Math.atan2(Math.hypot(x, y), Math.abs(z)))
  if (tiltDeg > TILT_MAX_DEG) {
    return fail('accel-sign/not-flat', SENSOR_TROUBLE.tilted(tiltDeg))
  }
  return ok(z > 0 ? 1 : -1)
}

/**
 * Gravity as W3C axes would read it at rest, as a unit vector, from the angles of a
 * `deviceorientation` event: the bottom row of its rotation matrix Rz(alpha) Rx(beta) Ry(gamma),
 * which does not depend on alpha.
 */
export function gravityFromOrientation(betaDeg: number, gammaDeg: number): Vector3 {
  const beta = radians(betaDeg)
  const gamma = radians(gammaDeg)
  return [-Math.cos(beta) * Math.sin(gamma), Math.sin(beta), Math.cos(beta) * Math.cos(gamma)]
}

/**
 * The same answer without a ritual, where the browser tells the orientation: acceleration at rest
 * points along the expected gravity or against it. 0 when neither is clear.
 */
export function signFromOrientation(
  restMps2: Vector3,
  betaDeg: number,
  gammaDeg: number,
): AccelSign {
  const expected = gravityFromOrientation(betaDeg, gammaDeg)
  const length = Math.hypot(...restMps2)
  const dot = restMps2.reduce((sum, value, axis) => sum + value * expected[axis]!, 0)
  const cosine = dot / length
  if (!(Math.abs(cosine) >= COSINE_MIN)) return 0
  return cosine > 0 ? 1 : -1
}
