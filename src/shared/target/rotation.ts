import type { Matrix3 } from '../model/target'

/** Determinant of a row-major 3 × 3 matrix. */
export function determinant(m: Matrix3): number {
  return (
    m[0] * (m[4] * m[8] - m[5] * m[7]) -
    m[1] * (m[3] * m[8] - m[5] * m[6]) +
    m[2] * (m[3] * m[7] - m[4] * m[6])
  )
}

/** Largest deviation of any entry of m·mᵀ from the identity; 0 for a rotation or a mirroring. */
export function orthonormalError(m: Matrix3): number {
  let worst = 0
  for (let i = 0; i < 3; i++) {
    for (let j = i; j < 3; j++) {
      let dot = 0
      for (let k = 0; k < 3; k++) dot += m[3 * i + k]! * m[3 * j + k]!
      worst = Math.max(worst, Math.abs(dot - (i === j ? 1 : 0)))
    }
  }
  return worst
}

/** Angle of the rotation that leads from a to b, degrees: acos((trace(aᵀb) - 1) / 2). */
export function rotationAngleDeg(a: Matrix3, b: Matrix3): number {
  let trace = 0
  for (let i = 0; i < 9; i++) trace += a[i]! * b[i]!
  return (Math.acos(Math.max(-1, Math.min(1, (trace - 1) / 2))) * 180) / Math.PI
}
