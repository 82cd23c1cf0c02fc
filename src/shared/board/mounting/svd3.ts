import type { Matrix3 } from '../../model/target'

export interface Svd3 {
  /** m = u · diag(s) · vᵀ, row-major; s descending and not negative. */
  u: Matrix3
  s: [number, number, number]
  v: Matrix3
}

const MOST_SWEEPS = 60

/**
 * Singular values of a 3 × 3 matrix by one-sided Jacobi rotations (Hestenes, J. SIAM 6(1), 1958):
 * columns are turned pairwise until they stand at right angles; their lengths are the singular values.
 * Columns of u that belong to a singular value of zero are completed to an orthonormal set.
 */
export function svd3(m: Matrix3): Svd3 {
  const a = [...m] as Matrix3
  const v: Matrix3 = [1, 0, 0, 0, 1, 0, 0, 0, 1]
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    const turned = [turnPair(a, v, 0, 1), turnPair(a, v, 0, 2), turnPair(a, v, 1, 2)]
    if (!turned.includes(true)) break
  }
  const column = (matrix: Matrix3, j: number): [number, number, number] => [
    matrix[j]!,
    matrix[3 + j]!,
    matrix[6 + j]!,
  ]
  const lengths = [0, 1, 2].map((j) => Math.hypot(...column(a, j)))
  const order = [0, 1, 2].sort((i, j) => lengths[j]! - lengths[i]!)
  const s = order.map((j) => lengths[j]!) as [number, number, number]
  const floor = 1e-14 * s[0]
  const u0 = s[0] > 0 ? scaled(column(a, order[0]!), 1 / s[0]) : ([1, 0, 0] as Vec)
  const u1 = s[1] > floor ? scaled(column(a, order[1]!), 1 / s[1]) : anyNormal(u0)
  const u2 = s[2] > floor ? scaled(column(a, order[2]!), 1 / s[2]) : cross(u0, u1)
  return {
    u: fromColumns(u0, u1, u2),
    s,
    v: fromColumns(column(v, order[0]!), column(v, order[1]!), column(v, order[2]!)),
  }
}

type Vec = [number, number, number]

/** Turns columns i and j of a and v so that those of a are orthogonal; false when they were. */
function turnPair(a: Matrix3, v: Matrix3, i: number, j: number): boolean {
  let [alpha, beta, gamma] = [0, 0, 0]
  for (let row = 0; row < 3; row++) {
    const [p, q] = [a[3 * row + i]!, a[3 * row + j]!]
    alpha += p * p
    beta += q * q
    gamma += p * q
  }
  if (Math.abs(gamma) <= 1e-16 * Math.sqrt(alpha * beta) || gamma === 0) return false
  const zeta = (beta - alpha) / (2 * gamma)
  const sign = zeta < 0 ? -1 : 1
  const t = sign / (Math.abs(zeta) + Math.hypot(1, zeta))
  const c = 1 / Math.hypot(1, t)
  for (const m of [a, v]) {
    for (let row = 0; row < 3; row++) {
      const [p, q] = [m[3 * row + i]!, m[3 * row + j]!]
      m[3 * row + i] = c * (p - t * q)
      m[3 * row + j] = c * (t * p + q)
    }
  }
  return true
}

function scaled([x, y, z]: Vec, factor: number): Vec {
  return [x * factor, y * factor, z * factor]
}

export function cross(a: Vec, b: Vec): Vec {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

function anyNormal(a: Vec): Vec {
  const least = [0, 1, 2].reduce((best, i) => (Math.abs(a[i]!) < Math.abs(a[best]!) ? i : best), 0)
  const other: Vec = [0, 0, 0]
  other[least] = 1
  const normal = cross(a, other)
  return scaled(normal, 1 / Math.hypot(...normal))
}

function fromColumns(a: Vec, b: Vec, c: Vec): Matrix3 {
  return [a[0], b[0], c[0], a[1], b[1], c[1], a[2], b[2], c[2]]
}
