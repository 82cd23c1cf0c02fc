import type { Matrix3 } from '../../model/target'
import { determinant } from '../../target/rotation'

type Vec = [number, number, number]

/** x with A x = b by Cramer's rule; null when A is (nearly) singular beside its own size. */
export function solve3(a: Matrix3, b: Vec): Vec | null {
  const inverse = invert3(a)
  if (inverse === null) return null
  const row = (i: number) =>
    inverse[3 * i]! * b[0] + inverse[3 * i + 1]! * b[1] + inverse[3 * i + 2]! * b[2]
  return [row(0), row(1), row(2)]
}

/** Inverse by cofactors; null when the determinant vanishes beside the entries. */
export function invert3(m: Matrix3): Matrix3 | null {
  const det = determinant(m)
  const size = Math.max(...m.map(Math.abs))
  if (!(Math.abs(det) > 1e-12 * size ** 3)) return null
  const [a, b, c, d, e, f, g, h, i] = m
  return [
    (e * i - f * h) / det,
    (c * h - b * i) / det,
    (b * f - c * e) / det,
    (f * g - d * i) / det,
    (a * i - c * g) / det,
    (c * d - a * f) / det,
    (d * h - e * g) / det,
    (b * g - a * h) / det,
    (a * e - b * d) / det,
  ]
}
