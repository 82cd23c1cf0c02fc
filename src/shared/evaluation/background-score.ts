import type { Core } from '../core/core'
import type { BackgroundScore } from '../model/evaluation'
import type { RecogniserModel } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import { poissonPerHour } from '../statistics/poisson'
import type { PreparedBackground } from '../training/prepare'
import { runStream } from '../training/stream'
import { acceptedFrom, type ThresholdScale } from './accepted-from'

export interface BackgroundCount {
  samples: number
  /** Segments that were answered with a gesture. */
  activations: number
  segments: number
  /** Threshold factor from which on each segment is answered; those that never are left out. */
  acceptedFrom: number[]
}

export const NO_BACKGROUND: BackgroundCount = {
  samples: 0,
  activations: 0,
  segments: 0,
  acceptedFrom: [],
}

/**
 * Counts what the loaded model answers where nothing was meant. With a button nothing is answered
 * unless it is pressed, so there is nothing to count.
 */
export function countBackground(
  core: Core,
  backgrounds: readonly PreparedBackground[],
  model: RecogniserModel,
  scale: ThresholdScale,
): BackgroundCount {
  const count = { ...NO_BACKGROUND, acceptedFrom: [] as number[] }
  if (model.button) return count
  for (const { counts } of backgrounds) {
    const movements = runStream(core, counts, model.segmenter)
    count.samples += counts.length / AXES
    count.segments += movements.length
    count.activations += movements.filter(({ event }) => event.kind === 'gesture').length
    for (const { event } of movements) {
      const from = acceptedFrom(event, model, scale)
      if (from !== null) count.acceptedFrom.push(from)
    }
  }
  return count
}

/** The counts of two rounds together. */
export function addBackground(a: BackgroundCount, b: BackgroundCount): BackgroundCount {
  return {
    samples: a.samples + b.samples,
    activations: a.activations + b.activations,
    segments: a.segments + b.segments,
    acceptedFrom: [...a.acceptedFrom, ...b.acceptedFrom],
  }
}

/** As a rate with Garwood's interval; null when no background was counted. */
export function scoreBackground(count: BackgroundCount, rateHz: number): BackgroundScore | null {
  if (count.samples === 0) return null
  const hours = count.samples / rateHz / 3600
  const { activations, segments } = count
  return {
    ...rateOf(activations, hours),
    segments,
    acceptedFrom: [...count.acceptedFrom].sort((a, b) => a - b),
  }
}

/** The same background at another threshold factor. */
export function backgroundAt(score: BackgroundScore, factor: number): BackgroundScore {
  const activations = score.acceptedFrom.filter((from) => from <= factor).length
  return { ...score, ...rateOf(activations, score.hours) }
}

function rateOf(activations: number, hours: number) {
  const { perHour, low, high } = poissonPerHour(activations, hours)
  return { hours, activations, perHour, low, high }
}
