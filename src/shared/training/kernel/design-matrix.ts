import { type Core, MAX_POOLS } from '../../core/core'
import { type FeatureShape, featureRecords } from '../../format/kernel-bytes'
import type { Random } from '../../statistics/random'
import { shuffled } from '../../statistics/shuffled'
import { quantile } from '../../statistics/summary'
import type { PlannedFeature } from './feature-plan'

/** Segments whose outputs a bias is taken from. */
const BIAS_SEGMENTS = 12
const LEAST_BIAS = -32768
const MOST_BIAS = 32767

/** Row-major table of numbers. */
export interface Matrix {
  rows: number
  columns: number
  values: Float64Array
}

/**
 * Sets each bias to the planned quantile of the feature's outputs over a few random segments, as the
 * core computes them. A model with the segments' normaliser must be loaded.
 */
export function findBiases(
  core: Core,
  queries: readonly Int8Array[],
  plan: readonly PlannedFeature[],
  random: Random,
): FeatureShape[] {
  return plan.map(({ shape, quantile: at }) => {
    const some = shuffled(queries, random).slice(0, BIAS_SEGMENTS)
    const outputs = core.kernelOutputs(some, featureRecords([shape]))
    const bias = Math.floor(quantile(Array.from(outputs), at))
    return { ...shape, bias: Math.max(LEAST_BIAS, Math.min(MOST_BIAS, bias)) }
  })
}

/** One row a segment, `pools` columns a feature: counts in either half and, third, longest run. */
export function countFeatures(
  core: Core,
  queries: readonly Int8Array[],
  features: readonly FeatureShape[],
  pools: number,
): Matrix {
  const counts = core.kernelCounts(queries, featureRecords(features))
  const columns = features.length * pools
  const values = new Float64Array(queries.length * columns)
  let at = 0
  for (let i = 0; i < queries.length * features.length; i++) {
    for (let pool = 0; pool < pools; pool++) values[at++] = counts[i * MAX_POOLS + pool]!
  }
  return { rows: queries.length, columns, values }
}
