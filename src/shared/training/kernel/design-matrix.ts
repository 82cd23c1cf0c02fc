import type { Core } from '../../core/core'
import { type FeatureShape, featureRecords } from '../../format/kernel-bytes'
import type { Random } from '../../statistics/random'
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
  const some = Math.min(BIAS_SEGMENTS, queries.length)
  const order = new Int32Array(queries.length)
  return plan.map(({ shape, quantile: at }) => {
    shuffle(order, random)
    const drawn = Array.from({ length: some }, (_, i) => queries[order[i]!]!)
    const outputs = core.kernelOutputs(drawn, featureRecords([shape]))
    const bias = Math.floor(quantile(outputs, at))
    return { ...shape, bias: Math.max(LEAST_BIAS, Math.min(MOST_BIAS, bias)) }
  })
}

/** Puts the numbers from 0 up in an order as `shuffled` draws it, without a copy for each feature. */
function shuffle(order: Int32Array, random: Random): void {
  for (let i = 0; i < order.length; i++) order[i] = i
  for (let i = order.length - 1; i > 0; i--) {
    const j = random.integer(i + 1)
    const other = order[i]!
    order[i] = order[j]!
    order[j] = other
  }
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
