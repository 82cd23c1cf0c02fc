import type { Algebra } from '../../core/core'
import type { Matrix } from './design-matrix'
import { cholesky, PLAIN_ALGEBRA, solveCholesky } from './linear-algebra'

/** Strengths worth trying, in units of the mean square of a standardised column times all columns. */
export const STRENGTHS = [0.01, 0.03, 0.1, 0.3, 1, 3]
/** Stands for an intercept without penalty: a column this much larger than the others. */
const INTERCEPT = 100

export interface RidgeFit {
  /** Columns × classes. */
  weights: Float64Array
  intercepts: Float64Array
  /** Rows × classes: each row by a fit without its group. */
  heldOut: Float64Array
  strength: number
  /** Mean squared error of heldOut. */
  loss: number
}

/**
 * Ridge regression onto +1 for a row's class and -1 for the others (as in MINIROCKET), on
 * standardised columns. The strength is the one with the least squared error where every group is
 * left out in turn; that comes without fitting again, from the blocks of the inverse (the
 * leave-one-out formula of Golub, Heath and Wahba, Technometrics 21(2), 1979, for groups).
 * @param classes class of each row, 0 to classCount - 1
 * @param groups rows that are left out together
 * @param algebra the core's, for speed
 */
export function fitRidge(
  table: Matrix,
  classes: readonly number[],
  classCount: number,
  groups: readonly number[][],
  strengths: readonly number[] = STRENGTHS,
  algebra: Algebra = PLAIN_ALGEBRA,
): RidgeFit {
  const { rows } = table
  const standard = standardise(table)
  const gram = algebra.gram(standard.values, rows, INTERCEPT)
  const targets = targetsOf(classes, classCount)
  let best: { strength: number; dual: Float64Array; heldOut: Float64Array; loss: number } | null =
    null
  for (const strength of strengths) {
    const shifted = gram.slice()
    for (let i = 0; i < rows; i++) shifted[i * rows + i]! += strength
    const inverse = algebra.inverse(shifted, rows)
    const dual = algebra.product(inverse, rows, targets, classCount)
    const heldOut = leaveGroupsOut(inverse, dual, targets, rows, classCount, groups)
    const loss = meanSquare(heldOut, targets)
    if (best === null || loss < best.loss) best = { strength, dual, heldOut, loss }
  }
  if (best === null) throw new RangeError('no strength was tried')
  const { strength, heldOut, loss } = best
  return { ...primal(standard, table, best.dual, classCount), heldOut, strength, loss }
}

interface Standard {
  /** Standardised and divided by the root of the number of columns. */
  values: Float64Array
  means: Float64Array
  /** What a column was divided by. */
  scales: Float64Array
}

function standardise({ rows, columns, values }: Matrix): Standard {
  const means = new Float64Array(columns)
  const squares = new Float64Array(columns)
  for (let i = 0; i < rows; i++) {
    for (let c = 0; c < columns; c++) means[c]! += values[i * columns + c]! / rows
  }
  for (let i = 0; i < rows; i++) {
    for (let c = 0; c < columns; c++)
      squares[c]! += (values[i * columns + c]! - means[c]!) ** 2 / rows
  }
  // A column that never changes says nothing; it must not be divided by nought.
  const scales = squares.map((square) => Math.sqrt(Math.max(square, 1e-3) * columns))
  const standard = new Float64Array(values.length)
  for (let i = 0; i < rows; i++) {
    for (let c = 0; c < columns; c++) {
      standard[i * columns + c] = (values[i * columns + c]! - means[c]!) / scales[c]!
    }
  }
  return { values: standard, means, scales }
}

function targetsOf(classes: readonly number[], classCount: number): Float64Array {
  const targets = new Float64Array(classes.length * classCount).fill(-1)
  for (const [row, each] of classes.entries()) targets[row * classCount + each] = 1
  return targets
}

/** Residual of a group left out: the inverse's block, inverted, times the group's dual values. */
function leaveGroupsOut(
  inverse: Float64Array,
  dual: Float64Array,
  targets: Float64Array,
  rows: number,
  classCount: number,
  groups: readonly number[][],
): Float64Array {
  const heldOut = new Float64Array(targets.length)
  for (const group of groups) {
    const size = group.length
    const block = new Float64Array(size * size)
    const residual = new Float64Array(size * classCount)
    for (const [i, row] of group.entries()) {
      for (let j = 0; j < size; j++) block[i * size + j] = inverse[row * rows + group[j]!]!
      for (let c = 0; c < classCount; c++) {
        residual[i * classCount + c] = dual[row * classCount + c]!
      }
    }
    solveCholesky(cholesky(block, size), size, residual, classCount)
    for (const [k, row] of group.entries()) {
      for (let c = 0; c < classCount; c++) {
        const at = row * classCount + c
        heldOut[at] = targets[at]! - residual[k * classCount + c]!
      }
    }
  }
  return heldOut
}

function meanSquare(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, i) => sum + (value - b[i]!) ** 2, 0) / a.length
}

function primal(
  { values, means, scales }: Standard,
  { rows, columns }: Matrix,
  dual: Float64Array,
  classCount: number,
): Pick<RidgeFit, 'weights' | 'intercepts'> {
  const weights = new Float64Array(columns * classCount)
  const intercepts = new Float64Array(classCount)
  for (let i = 0; i < rows; i++) {
    const factors = dual.subarray(i * classCount, (i + 1) * classCount)
    for (let g = 0; g < classCount; g++) intercepts[g]! += INTERCEPT * factors[g]!
    for (let c = 0; c < columns; c++) {
      const value = values[i * columns + c]!
      const at = c * classCount
      for (let g = 0; g < classCount; g++) weights[at + g]! += (factors[g]! * value) / scales[c]!
    }
  }
  for (let c = 0; c < columns; c++) {
    for (let g = 0; g < classCount; g++) intercepts[g]! -= means[c]! * weights[c * classCount + g]!
  }
  return { weights, intercepts }
}
