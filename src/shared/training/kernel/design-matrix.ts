import type { Core } from '../../core/core'
import { type FeatureShape, featureRecords } from '../../format/kernel-bytes'
import { createRandom, type Random } from '../../statistics/random'
import { quantileOfSorted } from '../../statistics/summary'
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

/** Row-major table of counts. */
export interface ByteMatrix {
  rows: number
  columns: number
  values: Uint8Array
}

/**
 * Sets each bias to the planned quantile of the feature's outputs over a few random segments, as the
 * core computes them. A model with the segments' normaliser must be loaded.
 * @param seed of the draw
 */
export function findBiases(
  core: Core,
  queries: readonly Int8Array[],
  plan: readonly PlannedFeature[],
  seed: number,
): FeatureShape[] {
  const some = Math.min(BIAS_SEGMENTS, queries.length)
  const draws = drawsOf(queries.length, plan.length, seed)
  return plan.map(({ shape, quantile: at }, feature) => {
    const drawn = draws.subarray(feature * some, (feature + 1) * some)
    const segments = Array.from(drawn, (segment) => queries[segment]!)
    const outputs = core.kernelOutputs(segments, featureRecords([shape])).sort()
    const bias = Math.floor(quantileOfSorted(outputs, at))
    return { ...shape, bias: Math.max(LEAST_BIAS, Math.min(MOST_BIAS, bias)) }
  })
}

let lastDraws = { by: '', draws: new Int32Array() }

/**
 * Numbers of the segments that each feature's bias is taken from. They hang on nothing but how many
 * there are, which the rounds of an evaluation have in common.
 */
function drawsOf(segments: number, features: number, seed: number): Int32Array {
  const by = `${segments} ${features} ${seed}`
  if (lastDraws.by === by) return lastDraws.draws
  const random = createRandom(seed)
  const some = Math.min(BIAS_SEGMENTS, segments)
  const draws = new Int32Array(features * some)
  const order = new Int32Array(segments)
  for (let feature = 0; feature < features; feature++) {
    shuffle(order, random)
    draws.set(order.subarray(0, some), feature * some)
  }
  lastDraws = { by, draws }
  return draws
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
