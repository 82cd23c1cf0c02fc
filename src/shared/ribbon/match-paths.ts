import { norm, subtract, type Vector3 } from '../attitude/vector'
import { median } from '../statistics/summary'
import type { EvenPath } from './even-path'

/** Takes laid over each other. */
export interface Consensus {
  points: Vector3[]
  speeds: number[]
  /** Middle distance of the takes from each point, m. */
  spreadM: number[]
}

/** Points before and behind its own that a point may be matched with, as a share of all. */
const BAND_SHARE = 0.12

/** Total distance of two paths of equal point count, index by index. */
function pathDistance(a: EvenPath, b: EvenPath): number {
  return a.points.reduce((sum, point, i) => sum + norm(subtract(point, b.points[i]!)), 0)
}

/** Orders paths by their points alone, so that nothing after depends on the order they came in. */
export function inOwnOrder(paths: readonly EvenPath[]): EvenPath[] {
  return [...paths].sort((a, b) => {
    for (let i = 0; i < a.points.length; i++) {
      for (let axis = 0; axis < 3; axis++) {
        const difference = a.points[i]![axis]! - b.points[i]![axis]!
        if (difference !== 0) return difference
      }
    }
    return 0
  })
}

/** The take that is nearest to all others together. */
function middlePath(paths: readonly EvenPath[]): EvenPath {
  let best = paths[0]!
  let bestSum = Number.POSITIVE_INFINITY
  for (const path of paths) {
    const sum = paths.reduce((total, other) => total + pathDistance(path, other), 0)
    if (sum < bestSum) {
      best = path
      bestSum = sum
    }
  }
  return best
}

/** Cheapest alignment of two paths in a band (dynamic time warping): pairs [i of a, j of b]. */
function align(a: readonly Vector3[], b: readonly Vector3[]): [number, number][] {
  const n = a.length
  const band = Math.ceil(BAND_SHARE * n)
  const cost = new Float64Array((n + 1) * (n + 1)).fill(Number.POSITIVE_INFINITY)
  cost[0] = 0
  const at = (i: number, j: number) => i * (n + 1) + j
  for (let i = 1; i <= n; i++) {
    for (let j = Math.max(1, i - band); j <= Math.min(n, i + band); j++) {
      const before = Math.min(cost[at(i - 1, j - 1)]!, cost[at(i - 1, j)]!, cost[at(i, j - 1)]!)
      cost[at(i, j)] = before + norm(subtract(a[i - 1]!, b[j - 1]!))
    }
  }
  const pairs: [number, number][] = []
  let [i, j] = [n, n]
  while (i > 0 && j > 0) {
    pairs.push([i - 1, j - 1])
    const [both, first, second] = [
      cost[at(i - 1, j - 1)]!,
      cost[at(i - 1, j)]!,
      cost[at(i, j - 1)]!,
    ]
    if (both <= first && both <= second) {
      i--
      j--
    } else if (first <= second) i--
    else j--
  }
  return pairs
}

/** Weights 1 2 1 over neighbours, twice: takes off the corners that medians leave; ends stay. */
function smoothed(values: readonly number[]): number[] {
  let result = [...values]
  for (let pass = 0; pass < 2; pass++) {
    result = result.map((value, i) => {
      const [before, after] = [result[i - 1], result[i + 1]]
      return before === undefined || after === undefined ? value : (before + 2 * value + after) / 4
    })
  }
  return result
}

function smoothedPoints(points: readonly Vector3[]): Vector3[] {
  const [x, y, z] = [0, 1, 2].map((axis) => smoothed(points.map((p) => p[axis]!)))
  return points.map((_, i) => [x![i]!, y![i]!, z![i]!])
}

/**
 * The median path: every take is aligned with the one in the middle, then the median is taken of
 * what lies on each of its points (one round of barycentre averaging after Petitjean, Ketterlin and
 * Gançarski, Pattern Recognition 44(3), 2011, with medians). Strokes that come a little earlier or
 * later in another take are not blurred away by it.
 */
export function consensus(paths: readonly EvenPath[]): Consensus {
  const ordered = inOwnOrder(paths)
  const middle = middlePath(ordered)
  const count = middle.points.length
  const points: Vector3[][] = Array.from({ length: count }, () => [])
  const speeds: number[][] = Array.from({ length: count }, () => [])
  for (const path of ordered) {
    for (const [i, j] of align(middle.points, path.points)) {
      points[i]!.push(path.points[j]!)
      speeds[i]!.push(path.speeds[j]!)
    }
  }
  const medians = points.map(
    (near): Vector3 => [
      median(near.map((p) => p[0])),
      median(near.map((p) => p[1])),
      median(near.map((p) => p[2])),
    ],
  )
  const spread = points.map((near, i) => median(near.map((p) => norm(subtract(p, medians[i]!)))))
  return {
    points: smoothedPoints(medians),
    speeds: smoothed(speeds.map((near) => median(near))),
    spreadM: smoothed(spread),
  }
}
