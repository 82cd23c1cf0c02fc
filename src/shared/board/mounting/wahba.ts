import type { Matrix3 } from '../../model/target'
import { determinant } from '../../target/rotation'
import { cross, svd3 } from './svd3'

export type Vec = [number, number, number]

export interface VectorPair {
  /** Seen in the frame that is asked for. */
  a: Vec
  /** The same direction in the other frame. */
  b: Vec
  weight: number
}

export interface WahbaFit {
  /** Rotation C with a ≈ C b, row-major. */
  rotation: Matrix3
  /** √ Σ w |a - C b|². */
  rssd: number
  /** Of Σ w a bᵀ, descending. */
  singular: [number, number, number]
  /** The best orthogonal matrix would mirror: an axis sign is flipped, or there are too few directions. */
  mirrored: boolean
  /**
   * How well the rotation is determined, 0 (one direction only) to 1: the sum of the two smaller
   * singular values (the last with the sign of the handedness) over twice the largest.
   */
  certainty: number
  /** Covariance of the rotation for unit variance of the vectors (Markley 1993), row-major. */
  sensitivity: Matrix3
}

/**
 * Wahba's problem (SIAM Review 7(3), 1965) by singular values (Kabsch 1976; Markley 1993): with
 * B = Σ w a bᵀ = U S Vᵀ the rotation is U diag(1, 1, det(U Vᵀ)) Vᵀ. Longer vectors weigh more.
 * With one direction only, the shortest rotation that brings it home is given, and certainty is 0.
 */
export function solveWahba(pairs: readonly VectorPair[]): WahbaFit {
  const product: Matrix3 = [0, 0, 0, 0, 0, 0, 0, 0, 0]
  for (const { a, b, weight } of pairs) {
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 3; j++) product[3 * i + j]! += weight * a[i]! * b[j]!
    }
  }
  const { u, s, v } = svd3(product)
  const hand = determinant(u) * determinant(v) < 0 ? -1 : 1
  const single = s[1] <= 1e-9 * s[0]
  const rotation = single ? shortest(column(u, 0), column(v, 0)) : compose(u, v, hand)
  const rssd = Math.sqrt(
    pairs.reduce((sum, { a, b, weight }) => {
      const c = apply(rotation, b)
      return sum + weight * ((a[0] - c[0]) ** 2 + (a[1] - c[1]) ** 2 + (a[2] - c[2]) ** 2)
    }, 0),
  )
  const last = hand * s[2]
  const meanWeight = pairs.reduce((sum, { weight }) => sum + weight, 0) / pairs.length
  return {
    rotation,
    rssd,
    singular: s,
    mirrored: !single && hand < 0,
    certainty: s[0] > 0 ? Math.max(0, s[1] + last) / (2 * s[0]) : 0,
    sensitivity: sensitivityOf(product, [s[0], s[1], last], meanWeight),
  }
}

export function apply(m: Matrix3, [x, y, z]: Vec): Vec {
  return [
    m[0] * x + m[1] * y + m[2] * z,
    m[3] * x + m[4] * y + m[5] * z,
    m[6] * x + m[7] * y + m[8] * z,
  ]
}

function column(m: Matrix3, j: number): Vec {
  return [m[j]!, m[3 + j]!, m[6 + j]!]
}

/** u · diag(1, 1, hand) · vᵀ */
function compose(u: Matrix3, v: Matrix3, hand: number): Matrix3 {
  const at = (i: number, j: number) =>
    u[3 * i]! * v[3 * j]! + u[3 * i + 1]! * v[3 * j + 1]! + hand * u[3 * i + 2]! * v[3 * j + 2]!
  return [at(0, 0), at(0, 1), at(0, 2), at(1, 0), at(1, 1), at(1, 2), at(2, 0), at(2, 1), at(2, 2)]
}

/** The smallest rotation that leads the unit vector b to a (Rodrigues). */
function shortest(a: Vec, b: Vec): Matrix3 {
  const [x, y, z] = cross(b, a)
  const cosine = a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
  if (cosine < -1 + 1e-12) {
    const [p, q, r] = perpendicular(b)
    return [
      2 * p * p - 1,
      2 * p * q,
      2 * p * r,
      2 * p * q,
      2 * q * q - 1,
      2 * q * r,
      2 * p * r,
      2 * q * r,
      2 * r * r - 1,
    ]
  }
  const k = 1 / (1 + cosine)
  return [
    cosine + k * x * x,
    k * x * y - z,
    k * x * z + y,
    k * x * y + z,
    cosine + k * y * y,
    k * y * z - x,
    k * x * z - y,
    k * y * z + x,
    cosine + k * z * z,
  ]
}

function perpendicular(b: Vec): Vec {
  const other: Vec = Math.abs(b[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]
  const [x, y, z] = cross(b, other)
  const length = Math.hypot(x, y, z)
  return [x / length, y / length, z / length]
}

function sensitivityOf(b: Matrix3, [s0, s1, s2]: Vec, meanWeight: number): Matrix3 {
  const zeta = (s0 + s1) * (s1 + s2) * (s2 + s0)
  const kappa = s0 * s1 + s1 * s2 + s2 * s0
  const at = (i: number, j: number) => {
    const bbt =
      b[3 * i]! * b[3 * j]! + b[3 * i + 1]! * b[3 * j + 1]! + b[3 * i + 2]! * b[3 * j + 2]!
    return (meanWeight / zeta) * ((i === j ? kappa : 0) + bbt)
  }
  return [at(0, 0), at(0, 1), at(0, 2), at(1, 0), at(1, 1), at(1, 2), at(2, 0), at(2, 1), at(2, 2)]
}
