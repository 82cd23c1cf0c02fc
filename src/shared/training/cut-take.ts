import type { Core } from '../core/core'
import type { RecogniserModel } from '../model/recogniser-model'
import { judgeCut } from './judge-cut'
import { type CutInput, runPressed } from './press'
import { runStream, type StreamMovement } from './stream'

export type { CutInput }

/** 'ok' one movement, 'missed' none, 'split' more than one, 'long' and 'short' not compared. */
export type Cut = 'ok' | 'missed' | 'split' | 'long' | 'short'

/** What the core made of one take. */
export interface TakeCut {
  cut: Cut
  /** The longest segment within the take's trim; null when missed. */
  movement: StreamMovement | null
}

/**
 * Runs a take through the loaded model as if it happened live.
 * @param model the model that is loaded
 * @param taught as in `StreamOptions`
 */
export function cutTake(
  core: Core,
  take: CutInput,
  model: RecogniserModel,
  taught = false,
): TakeCut {
  const movements = model.button
    ? runPressed(core, take, model, { taught })
    : runStream(core, take.counts, model.segmenter, { taught })
  return judgeCut(movements, take)
}
