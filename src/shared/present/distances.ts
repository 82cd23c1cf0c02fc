import type { CoreEvent } from '../core/core'
import type { RecogniserModel } from '../model/recogniser-model'

/** One gesture's distance to the last movement, against its own threshold. */
export interface DistanceRow {
  gestureId: string
  name: string
  distance: number
  threshold: number
  /** The two the core decided between. */
  role: 'nearest' | 'runner-up' | 'other'
  /** Whether the distance is within the threshold. */
  within: boolean
}

export interface DistanceTable {
  /** Nearest first: the order the core decides in. */
  rows: DistanceRow[]
  /** End of a common axis: shows every threshold, and distances up to twice the largest one. */
  axisEnd: number
}

/**
 * Distances of one event, sorted; null when nothing was compared.
 * @param distances to each gesture's nearest template; null where there is none, or none was compared
 */
export function distanceTable(
  event: CoreEvent,
  distances: number[] | null,
  model: RecogniserModel,
): DistanceTable | null {
  const compared = model.kernel === null ? distances : decidedDistances(event, model)
  if (compared === null) return null
  const rows = model.gestures.flatMap((gesture, index): DistanceRow[] => {
    const distance = compared[index] ?? null
    if (distance === null) return []
    const role =
      index === event.gesture ? 'nearest' : index === event.runnerUp ? 'runner-up' : 'other'
    const { id, name, threshold } = gesture
    return [{ gestureId: id, name, distance, threshold, role, within: distance <= threshold }]
  })
  rows.sort((a, b) => a.distance - b.distance)
  const largestThreshold = Math.max(1, ...rows.map((row) => row.threshold))
  const farthest = Math.max(1, ...rows.map((row) => row.distance))
  const nearest = rows[0]?.distance ?? 0
  const wanted = Math.max(largestThreshold * 1.1, Math.min(farthest, largestThreshold * 2), nearest)
  return { rows, axisEnd: wanted * 1.02 }
}

/**
 * With kernel features thresholds are of another distance than that to templates, which the core gives
 * for the two gestures it decided between.
 */
function decidedDistances(event: CoreEvent, model: RecogniserModel): (number | null)[] | null {
  if (event.distance === null) return null
  return model.gestures.map((_, index) => {
    if (index === event.gesture) return event.distance
    return index === event.runnerUp ? event.runnerUpDistance : null
  })
}
