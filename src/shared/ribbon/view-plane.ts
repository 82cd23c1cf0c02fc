import { across, cross, direction, dot, subtract, type Vector3 } from '../attitude/vector'

/** Two directions at right angles that span the picture: to its right and to its top. */
export interface ViewPlane {
  right: Vector3
  top: Vector3
}

/**
 * Small extra variance (share of all) of right, ahead, up: a path that is almost a straight line has
 * no second direction of its own, and is then seen from behind.
 */
const PREFERENCE: Vector3 = [0.003, 0.001, 0.002]

/** For each axis the eye may look along (right, ahead, up): what is right and top of the picture. */
const VIEWS: readonly { right: Vector3; top: Vector3 }[] = [
  { right: [0, 1, 0], top: [0, 0, 1] }, // from the side
  { right: [1, 0, 0], top: [0, 0, 1] }, // from behind
  { right: [1, 0, 0], top: [0, 1, 0] }, // from above
]

function covariance(points: readonly Vector3[]): number[][] {
  const mean = [0, 1, 2].map((axis) => points.reduce((s, p) => s + p[axis]!, 0) / points.length)
  return [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) => points.reduce((s, p) => s + (p[i]! - mean[i]!) * (p[j]! - mean[j]!), 0)),
  )
}

/**
 * Eigenvector of the smallest eigenvalue of a symmetric 3 × 3 matrix, by cyclic Jacobi rotations
 * (Golub and Van Loan, Matrix Computations, 8.5). Its sign is arbitrary.
 */
export function leastDirection(matrix: readonly (readonly number[])[]): Vector3 {
  const a = matrix.map((row) => [...row])
  const v = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ]
  for (let sweep = 0; sweep < 20; sweep++) {
    for (const [p, q] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const) {
      if (a[p]![q] === 0) continue
      const theta = (a[q]![q]! - a[p]![p]!) / (2 * a[p]![q]!)
      const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1))
      const c = 1 / Math.hypot(t, 1)
      for (const m of [a, v]) rotateColumns(m, p, q, c, t * c)
      for (let k = 0; k < 3; k++) {
        const [ap, aq] = [a[p]![k]!, a[q]![k]!]
        a[p]![k] = c * ap - t * c * aq
        a[q]![k] = t * c * ap + c * aq
      }
    }
  }
  let least = 0
  for (let i = 1; i < 3; i++) if (a[i]![i]! < a[least]![least]!) least = i
  return [v[0]![least]!, v[1]![least]!, v[2]![least]!]
}

function rotateColumns(m: number[][], p: number, q: number, c: number, s: number): void {
  for (const row of m) {
    const [mp, mq] = [row[p]!, row[q]!]
    row[p] = c * mp - s * mq
    row[q] = s * mp + c * mq
  }
}

/**
 * The plane in which the path varies most. Its signs come from the person's own directions and not
 * from the data: of the views from the side, from behind and from above the nearest is turned onto
 * the plane. So a movement mirrored left to right gives the mirrored picture, and up stays up.
 */
export function viewPlane(points: readonly Vector3[]): ViewPlane {
  const c = covariance(points)
  const all = c[0]![0]! + c[1]![1]! + c[2]![2]!
  for (let i = 0; i < 3; i++) c[i]![i]! += all * PREFERENCE[i]!
  const normal = leastDirection(c)
  const sizes = normal.map(Math.abs)
  let axis = 1
  for (const other of [0, 2]) if (sizes[other]! > sizes[axis]! + 1e-9) axis = other
  const view = VIEWS[axis]!
  const top = direction(across(view.top, normal), view.top)
  const side = cross(top, normal)
  const right = dot(side, view.right) < 0 ? subtract([0, 0, 0], side) : side
  return { right, top }
}
