import type { Core, DtwOptions } from '../core/core'
import { channelCount, type RecogniserModel } from '../model/recogniser-model'

/** A segment laid against a template, point by point. */
export interface Warping {
  /** Pairs of a point of the segment and a point of the template, from the first to the last. */
  path: [point: number, templatePoint: number][]
  /** Sum of local costs when the path leaves each point of the segment; ends at the distance. */
  grown: number[]
  distance: number
}

/** The warping to a gesture's nearest template. */
export interface NearestWarping extends Warping {
  /** Index of the template within its gesture. */
  template: number
}

/**
 * Cells of the warping matrix, row-major: the core's own distance between the first i + 1 points of a
 * and the first j + 1 of b, which is what it holds in that cell. Infinity outside the band.
 */
export function warpingMatrix(
  core: Core,
  a: Int8Array,
  b: Int8Array,
  options: DtwOptions,
): Float64Array {
  const { channels, band } = options
  const [rows, columns] = [a.length / channels, b.length / channels]
  const cells = new Float64Array(rows * columns).fill(Number.POSITIVE_INFINITY)
  for (let i = 0; i < rows; i++) {
    const head = a.subarray(0, (i + 1) * channels)
    for (let j = Math.max(0, i - band); j <= Math.min(columns - 1, i + band); j++) {
      cells[i * columns + j] = core.dtw(head, b.subarray(0, (j + 1) * channels), options)
    }
  }
  return cells
}

/**
 * The path behind the core's distance, traced back from the last cell to the first by the cheapest
 * of the three steps; the diagonal one where steps cost the same. Null where the band allows none.
 */
export function warp(
  core: Core,
  segment: Int8Array,
  template: Int8Array,
  options: DtwOptions,
): Warping | null {
  const columns = template.length / options.channels
  const cells = warpingMatrix(core, segment, template, options)
  const at = (i: number, j: number) =>
    i < 0 || j < 0 ? Number.POSITIVE_INFINITY : cells[i * columns + j]!
  let [i, j] = [segment.length / options.channels - 1, columns - 1]
  const distance = at(i, j)
  if (!Number.isFinite(distance)) return null
  const path: Warping['path'] = [[i, j]]
  while (i > 0 || j > 0) {
    const least = Math.min(at(i - 1, j - 1), at(i - 1, j), at(i, j - 1))
    if (at(i - 1, j - 1) === least) [i, j] = [i - 1, j - 1]
    else if (at(i - 1, j) === least) i -= 1
    else j -= 1
    path.push([i, j])
  }
  path.reverse()
  const grown: number[] = []
  for (const [point, templatePoint] of path) grown[point] = at(point, templatePoint)
  return { path, grown, distance }
}

/**
 * How a compared segment lies against the nearest template of each gesture; null for a gesture
 * without templates.
 * @param query the segment after normalisation, as the core compared it
 */
export function unrollSegment(
  core: Core,
  model: RecogniserModel,
  query: Int8Array,
): (NearestWarping | null)[] {
  const options = {
    channels: channelCount(model.normaliser),
    band: model.band,
    cost: model.cost,
  }
  return model.gestures.map(({ templates }) => {
    const distances = templates.map((points) => core.dtw(query, points, options))
    const template = distances.indexOf(Math.min(...distances))
    const points = templates[template]
    const warping = points === undefined ? null : warp(core, query, points, options)
    return warping === null ? null : { ...warping, template }
  })
}
