import type { Core } from '../core/core'
import type { RecogniserModel } from '../model/recogniser-model'
import { type CutInput, runPressed } from './press'
import { longest, runStream, type StreamMovement } from './stream'

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
  return judge(movements.filter(({ event }) => liesWithin(event, take)))
}

/** Short segments are no activations on the board, so they do not make a take split. */
function judge(movements: StreamMovement[]): TakeCut {
  const movement = longest(movements)
  if (movement === null) return { cut: 'missed', movement }
  const { reason } = movement.event
  if (reason === 'long' || reason === 'short') return { cut: reason, movement }
  const activations = movements.filter(({ event }) => event.reason !== 'short').length
  return { cut: activations > 1 ? 'split' : 'ok', movement }
}

function liesWithin(event: { start: number; end: number }, take: CutInput): boolean {
  const middle = (event.start + event.end) / 2
  return middle >= take.from && middle <= take.to
}
