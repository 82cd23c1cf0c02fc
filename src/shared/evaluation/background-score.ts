import type { Core } from '../core/core'
import type { BackgroundScore } from '../model/evaluation'
import type { RecogniserModel } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import { poissonPerHour } from '../statistics/poisson'
import type { PreparedBackground } from '../training/prepare'
import { runStream } from '../training/stream'

export interface BackgroundCount {
  samples: number
  /** Segments that were answered with a gesture. */
  activations: number
  segments: number
}

export const NO_BACKGROUND: BackgroundCount = { samples: 0, activations: 0, segments: 0 }

/**
 * Counts what the loaded model answers where nothing was meant. With a button nothing is answered
 * unless it is pressed, so there is nothing to count.
 */
export function countBackground(
  core: Core,
  backgrounds: readonly PreparedBackground[],
  model: RecogniserModel,
): BackgroundCount {
  const count = { ...NO_BACKGROUND }
  if (model.button) return count
  for (const { counts } of backgrounds) {
    const movements = runStream(core, counts, model.segmenter)
    count.samples += counts.length / AXES
    count.segments += movements.length
    count.activations += movements.filter(({ event }) => event.kind === 'gesture').length
  }
  return count
}

/** As a rate with Garwood's interval; null when no background was counted. */
export function scoreBackground(count: BackgroundCount, rateHz: number): BackgroundScore | null {
  if (count.samples === 0) return null
  const hours = count.samples / rateHz / 3600
  const { perHour, low, high } = poissonPerHour(count.activations, hours)
  return { hours, activations: count.activations, perHour, low, high, segments: count.segments }
}
