import { channelCount, type ModelNormaliser, type ModelSegmenter } from '../model/recogniser-model'
import type { Prepared } from './prepare'
import type { TemplateLimits } from './template-choice'

/** Fields and check of the model bytes, and a gesture's entry (FORMAT.md, "Model bytes"). */
const FIXED_BYTES = 80
const GESTURE_BYTES = 8
/** MVW_MAX_TEMPLATES. */
const MOST_TEMPLATES = 512
/** `sizeof(mvw_state)` on a 32-bit target, as in README.md. */
const STATE_BYTES = 84

/** How many templates fit; null when not even one a gesture does. */
export function templateLimits(
  { settings, target }: Pick<Prepared, 'settings' | 'target'>,
  normaliser: ModelNormaliser,
  gestureCount: number,
): TemplateLimits | null {
  const room = target.modelBudgetBytes - FIXED_BYTES - GESTURE_BYTES * gestureCount
  const total = Math.min(
    MOST_TEMPLATES,
    Math.floor(room / (normaliser.length * channelCount(normaliser))),
  )
  return total < gestureCount ? null : { perGesture: settings.templatesPerGesture, total }
}

/** Bytes of RAM on the target: ring of samples, scratch for the query, one warping row, state. */
export function ramBytesOf(segmenter: ModelSegmenter, length: number, channels: number): number {
  const ringSamples = segmenter.maxLength + segmenter.offHold + segmenter.accelLag + 1
  return ringSamples * 12 + length * channels * 2 + length * 4 + STATE_BYTES
}
