import type { CoreEvent } from '../core/core'
import type { RecogniserModel } from '../model/recogniser-model'

/** How a model's thresholds follow the factor they were learned with. */
export interface ThresholdScale {
  /** Factor in the thresholds of the model that decided. */
  factor: number
  /** As in `TrainedModel`: null where thresholds are multiplied, else they move by its logarithm. */
  distancePerLog: number | null
}

/**
 * Threshold factor from which on a movement would have been answered with its nearest gesture, as
 * nothing but thresholds follows the factor; null when no factor makes it one: nothing was compared, or the
 * runner-up is too near.
 */
export function acceptedFrom(
  event: CoreEvent,
  { marginPercent }: Pick<RecogniserModel, 'marginPercent'>,
  { factor, distancePerLog }: ThresholdScale,
): number | null {
  const { gesture, distance, threshold } = event
  if (gesture === null || distance === null || isAmbiguous(event, marginPercent)) return null
  if (distance === 0) return 0
  const needed =
    distancePerLog === null
      ? factor * (distance / threshold)
      : factor * Math.exp(distancePerLog * (distance - threshold))
  return Number.isFinite(needed) ? needed : null
}

/** The threshold that would have stood in the event at another factor. */
export function thresholdAt(threshold: number, scale: ThresholdScale, factor: number): number {
  const ratio = factor / scale.factor
  const moved =
    scale.distancePerLog === null
      ? threshold * ratio
      : threshold + Math.log(ratio) / scale.distancePerLog
  return Math.max(0, Math.round(moved))
}

/** The core's rule of the margin, which stands after that of the threshold. */
function isAmbiguous(
  { distance, runnerUp, runnerUpDistance }: CoreEvent,
  marginPercent: number,
): boolean {
  if (distance === null || runnerUp === null || runnerUpDistance === null) return false
  return runnerUpDistance - distance < Math.floor(distance / 100) * marginPercent
}
