import {
  channelCount,
  type ModelNormaliser,
  type RecogniserModel,
  rowValues,
} from '../model/recogniser-model'
import type { Target } from '../model/target'
import type { Prepared } from './prepare'
import type { TemplateLimits } from './template-choice'

/** Fields and check of the model bytes, and a gesture's entry (FORMAT.md, "Model bytes"). */
const FIXED_BYTES = 80
const GESTURE_BYTES = 8
/** MVW_MAX_TEMPLATES. */
export const MOST_TEMPLATES = 512
/** `sizeof(mvw_state)` on a 32-bit target, as in README.md. */
const STATE_BYTES = 84

/** Bytes that templates and kernel features may take together. */
export function roomForTables(target: Target, gestureCount: number): number {
  return target.modelBudgetBytes - FIXED_BYTES - GESTURE_BYTES * gestureCount
}

/** How many templates fit; null when not even one a gesture does. */
export function templateLimits(
  { settings, target }: Pick<Prepared, 'settings' | 'target'>,
  normaliser: ModelNormaliser,
  gestureCount: number,
): TemplateLimits | null {
  const room = roomForTables(target, gestureCount)
  const total = Math.min(
    MOST_TEMPLATES,
    Math.floor(room / (normaliser.length * channelCount(normaliser))),
  )
  return total < gestureCount ? null : { perGesture: settings.templatesPerGesture, total }
}

/** Bytes of RAM on the target: ring of samples, scratch for the query, row and scores, state. */
export function ramBytesOf(model: RecogniserModel): number {
  const { segmenter, normaliser } = model
  const ringSamples = segmenter.maxLength + segmenter.offHold + segmenter.accelLag + 1
  const queryBytes = normaliser.length * channelCount(normaliser) * 2
  return ringSamples * 12 + queryBytes + rowValues(model) * 4 + STATE_BYTES
}
