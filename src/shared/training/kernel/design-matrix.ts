import type { Core } from '../../core/core'
import { type FeatureShape, featureRecords } from '../../format/kernel-bytes'
import type { Random } from '../../statistics/random'
import { shuffled } from '../../statistics/shuffled'
import { quantile } from '../../statistics/summary'
import type { PlannedFeature } from './feature-plan'

/** Segments whose outputs a bias is taken from. */
const BIAS_SEGMENTS = 12
const LEAST_BIAS = -32768
const MOST_BIAS = 32767

/** Counts of kernel features, a row a segment: of each feature MAX_POOLS numbers, 0 to 255. */
export interface CountTable {
  rows: number
  features: number
  counts: Uint8Array
}

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

/** Counts of every feature over every segment: all MAX_POOLS numbers of each, row by row. */
export function countFeatures(
  core: Core,
  queries: readonly Int8Array[],
  features: readonly FeatureShape[],
): CountTable {
  const counts = core.kernelCounts(queries, featureRecords(features))
  return { rows: queries.length, features: features.length, counts }
}
