import type { Algebra } from '../../core/core'
import type { FeatureShape } from '../../format/kernel-bytes'
import type { ModelKernel } from '../../model/recogniser-model'
import { quantile } from '../../statistics/summary'
import type { ByteMatrix } from './design-matrix'
import { PLAIN_ALGEBRA } from './linear-algebra'

const MOST_WEIGHT = 127
/** Weights beyond this quantile saturate, so that a few large ones do not coarsen all others. */
const SATURATED = 0.9995
/** Greatest log_weight that the model holds. */
const MOST_LOG_WEIGHT = 65535
/** Nearest training example stays this far from nought, in units of the regression's targets. */
const ROOM = 3

export interface Quantised {
  kernel: ModelKernel
  /** Distance units for one unit of the regression's targets. */
  unit: number
  /** The constant of the distance, in target units. */
  constant: number
  /** Share of training examples that int8 weights name differently from exact ones. */
  changed: number
}

/**
 * Rounds a fit to what the core computes with. Distance of class g, in target units, is
 * constant - score + logFactor × ln(1 + template distance).
 * @param exact weights, columns × classes
 * @param fitted scores of the fit, rows × classes
 * @param logDistances ln(1 + template distance), row-major, or null without templates
 */
export function quantiseKernel(
  features: readonly FeatureShape[],
  pools: 2 | 3,
  exact: Float64Array,
  fitted: Float64Array,
  counts: ByteMatrix,
  logFactor: number,
  logDistances: Float64Array | null,
  algebra: Algebra = PLAIN_ALGEBRA,
): Quantised {
  const classCount = fitted.length / counts.rows
  const size = quantile(exact.map(Math.abs), SATURATED)
  const unit = Math.min(
    MOST_WEIGHT / Math.max(size, 1e-9),
    logFactor > 0 ? MOST_LOG_WEIGHT / (logFactor * Math.LN2) : Number.POSITIVE_INFINITY,
  )
  const weights = Int8Array.from(exact, (weight) =>
    Math.max(-MOST_WEIGHT, Math.min(MOST_WEIGHT, Math.round(weight * unit))),
  )
  const rounded = algebra.product(
    counts.values,
    counts.rows,
    Float64Array.from(weights),
    classCount,
  )
  // Rounding shifts the mean score of a class; its intercept takes that back.
  const intercepts = Float64Array.from({ length: classCount }, (_, g) => {
    let left = 0
    for (let i = 0; i < counts.rows; i++) {
      left += fitted[i * classCount + g]! - rounded[i * classCount + g]! / unit
    }
    return left / counts.rows
  })
  const after = rounded.map((score, at) => score / unit + intercepts[at % classCount]!)
  const least = after.reduce((lowest, score, at) => {
    return Math.min(lowest, logFactor * (logDistances?.[at] ?? 0) - score)
  }, Number.POSITIVE_INFINITY)
  const record = pools * classCount
  const constant = ROOM - least
  return {
    kernel: {
      pools,
      logWeight: logDistances === null ? 0 : Math.round(logFactor * Math.LN2 * unit),
      bases: [...intercepts].map((intercept) => Math.round((constant - intercept) * unit)),
      features: features.map((feature, f) => ({
        ...feature,
        weights: weights.slice(f * record, (f + 1) * record),
      })),
    },
    unit,
    constant,
    changed: shareChanged(fitted, after, classCount),
  }
}

function shareChanged(a: Float64Array, b: Float64Array, classCount: number): number {
  const rows = a.length / classCount
  let changed = 0
  for (let i = 0; i < rows; i++) {
    const best = (scores: Float64Array) => {
      const row = scores.subarray(i * classCount, (i + 1) * classCount)
      return row.indexOf(Math.max(...row))
    }
    if (best(a) !== best(b)) changed++
  }
  return changed / rows
}
