import { add, norm, scale, subtract, type Vector3 } from '../attitude/vector'
import type { TipPath } from './tip-path'

/** A path at points that follow each other at even distances along it. */
export interface EvenPath {
  points: Vector3[]
  tips: Vector3[]
  speeds: number[]
  /** Length of the path, m. */
  lengthM: number
}

/** Resamples a path by arc length, so that takes of different tempo lie point on point. */
export function evenPath(path: TipPath, count: number): EvenPath {
  const along = [0]
  for (let i = 1; i < path.points.length; i++) {
    along.push(along[i - 1]! + norm(subtract(path.points[i]!, path.points[i - 1]!)))
  }
  const lengthM = along.at(-1)!
  const result: EvenPath = { points: [], tips: [], speeds: [], lengthM }
  let i = 0
  for (let k = 0; k < count; k++) {
    const at = (lengthM * k) / (count - 1)
    while (i + 2 < along.length && along[i + 1]! < at) i++
    const span = along[i + 1]! - along[i]!
    const share = span > 0 ? Math.min(1, (at - along[i]!) / span) : 0
    const mix = (list: Vector3[]) => add(scale(list[i]!, 1 - share), scale(list[i + 1]!, share))
    result.points.push(mix(path.points))
    result.tips.push(mix(path.tips))
    result.speeds.push(path.speeds[i]! * (1 - share) + path.speeds[i + 1]! * share)
  }
  return result
}
