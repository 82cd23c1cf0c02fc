import type { Matrix3 } from '../model/target'
import { TARGET_NAMES } from '../words/en/target-names'
import { determinant, rotationAngleDeg } from './rotation'

/** One way to fix the sensor in the prop with its axes along the prop's. */
export interface Mounting {
  /** Prop axis behind each board axis in turn, such as '+y-x+z'. */
  key: string
  /** For people: 'board x = prop y, board y = −prop x, board z = prop z'. */
  name: string
  matrix: Matrix3
}

export const IDENTITY_MOUNTING: Readonly<Matrix3> = [1, 0, 0, 0, 1, 0, 0, 0, 1]

const AXIS_LETTERS = ['x', 'y', 'z'] as const
/** The six orders of three axes. */
export const AXIS_ORDERS = [
  [0, 1, 2],
  [1, 2, 0],
  [2, 0, 1],
  [0, 2, 1],
  [1, 0, 2],
  [2, 1, 0],
] as const

function signedPermutation(axes: readonly number[], signs: readonly number[]): Matrix3 {
  const matrix: Matrix3 = [0, 0, 0, 0, 0, 0, 0, 0, 0]
  for (let row = 0; row < 3; row++) matrix[3 * row + axes[row]!] = signs[row]!
  return matrix
}

function describe(axes: readonly number[], signs: readonly number[]): Mounting {
  const key = axes.map((axis, row) => (signs[row]! > 0 ? '+' : '-') + AXIS_LETTERS[axis]).join('')
  const name = axes
    .map((axis, row) => {
      const sign = signs[row]! > 0 ? '' : '−'
      return TARGET_NAMES.axisLies(AXIS_LETTERS[row]!, sign, AXIS_LETTERS[axis]!)
    })
    .join(', ')
  return { key, name, matrix: signedPermutation(axes, signs) }
}

function allMountings(): Mounting[] {
  const found: Mounting[] = []
  for (const axes of AXIS_ORDERS) {
    for (let bits = 0; bits < 8; bits++) {
      const signs = [0, 1, 2].map((row) => ((bits >> row) & 1 ? -1 : 1))
      const mounting = describe(axes, signs)
      if (determinant(mounting.matrix) > 0) found.push(mounting)
    }
  }
  return found
}

/**
 * The 24 mountings: signed permutations with determinant +1, which are the rotations of a cube. The
 * other 24 signed permutations are mirrorings that no real mounting can make. Identity first.
 */
export const MOUNTINGS: readonly Mounting[] = allMountings()

/** The axis-parallel mounting nearest to a rotation, and the angle between the two in degrees. */
export function nearestMounting(matrix: Matrix3): { mounting: Mounting; angleDeg: number } {
  let mounting = MOUNTINGS[0]!
  let angleDeg = rotationAngleDeg(matrix, mounting.matrix)
  for (const candidate of MOUNTINGS) {
    const angle = rotationAngleDeg(matrix, candidate.matrix)
    if (angle < angleDeg) {
      mounting = candidate
      angleDeg = angle
    }
  }
  return { mounting, angleDeg }
}
