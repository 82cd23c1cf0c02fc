import type { Algebra } from '../../core/core'
import type { Design } from './design'
import type { ByteMatrix } from './design-matrix'
import { PLAIN_ALGEBRA } from './linear-algebra'

/** Strengths worth trying, in units of the mean square of a standardised column times all columns. */
export const STRENGTHS = [0.01, 0.03, 0.1, 0.3, 1, 3]
/** Stands for an intercept without penalty: a column this much larger than the others. */
const INTERCEPT = 100

export interface RidgeFit {
  /** Rows × classes: what every row adds to the weights of the columns. */
  dual: Float64Array
  /** Rows × classes: each row by a fit with all rows, and by a fit without its group. */
  fitted: Float64Array
  heldOut: Float64Array
  strength: number
  /** Mean squared error of heldOut. */
  loss: number
}

/**
 * Ridge regression onto +1 for a row's class and -1 for the others (as in MINIROCKET), on
 * standardised columns. The strength is the one with the least squared error where every group is
 * left out in turn: looked for from the second on, as libraries of some hundred takes ask for little, to
 * where the error rises again.
 * @param gram of the design with the groups' rows one after the other, the lower half
 * @param classes class of each row, 0 to classCount - 1
 * @param groups rows that are left out together
 * @param strengths rising
 * @param algebra the core's, for speed
 */
export function fitRidge(
  gram: Float64Array,
  classes: readonly number[],
  classCount: number,
  groups: readonly number[][],
  strengths: readonly number[] = STRENGTHS,
  algebra: Algebra = PLAIN_ALGEBRA,
): RidgeFit {
  const order = groups.flat()
  const sizes = groups.map((group) => group.length).filter((size) => size > 0)
  const targets = targetsOf(
    order.map((row) => classes[row]!),
    classCount,
  )
  const fitAt = (strength: number): RidgeFit => {
    const both = { add: INTERCEPT, strength }
    const { dual, residuals } = algebra.leaveOut(gram, both, targets, classCount, sizes)
    const back = (values: Float64Array) => inRows(values, order, classCount)
    return {
      dual: back(dual),
      fitted: back(targets.map((target, at) => target - strength * dual[at]!)),
      heldOut: back(targets.map((target, at) => target - residuals[at]!)),
      strength,
      loss: residuals.reduce((sum, residual) => sum + residual ** 2, 0) / residuals.length,
    }
  }
  return leastLoss(strengths, fitAt)
}

function leastLoss(strengths: readonly number[], fitAt: (strength: number) => RidgeFit): RidgeFit {
  const start = Math.min(1, strengths.length - 1)
  let best = fitAt(strengths[start]!)
  let at = start - 1
  for (; at >= 0; at--) {
    const lower = fitAt(strengths[at]!)
    if (lower.loss > best.loss) break
    best = lower
  }
  if (at < start - 1) return best
  for (at = start + 1; at < strengths.length; at++) {
    const higher = fitAt(strengths[at]!)
    if (higher.loss >= best.loss) break
    best = higher
  }
  return best
}

function inRows(values: Float64Array, order: readonly number[], columns: number): Float64Array {
  const rows = new Float64Array(values.length)
  for (const [at, row] of order.entries()) {
    for (let c = 0; c < columns; c++) rows[row * columns + c] = values[at * columns + c]!
  }
  return rows
}

function targetsOf(classes: readonly number[], classCount: number): Float64Array {
  const targets = new Float64Array(classes.length * classCount).fill(-1)
  for (const [row, each] of classes.entries()) targets[row * classCount + each] = 1
  return targets
}

/**
 * Weights of counts, columns × classes: the weighted counts and one number a class are what is fitted.
 * @param design what the fit's gram came from
 * @param places columns of the design that the counts are of
 */
export function weightsOf(
  { dual }: RidgeFit,
  { means, scales }: Design,
  { rows, columns, values }: ByteMatrix,
  places: Int32Array,
  algebra: Algebra = PLAIN_ALGEBRA,
): Float64Array {
  const classCount = dual.length / rows
  const across = new Float64Array(dual.length)
  const sums = new Float64Array(classCount)
  for (let i = 0; i < rows; i++) {
    for (let g = 0; g < classCount; g++) {
      across[g * rows + i] = dual[i * classCount + g]!
      sums[g]! += dual[i * classCount + g]!
    }
  }
  const products = algebra.product(across, classCount, values, columns)
  const weights = new Float64Array(columns * classCount)
  for (let c = 0; c < columns; c++) {
    const mean = means[places[c]!]!
    const scale = scales[places[c]!]! ** 2 * columns
    for (let g = 0; g < classCount; g++) {
      weights[c * classCount + g] = (products[g * columns + c]! - mean * sums[g]!) / scale
    }
  }
  return weights
}
