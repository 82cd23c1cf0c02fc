import type { Core } from '../core/core'
import type { RecogniserModel } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import type { PreparedTake } from './prepare'
import { longest, runStream, type StreamMovement, wasCompared } from './stream'

/** 'ok' one movement, 'missed' none, 'split' more than one, 'long' and 'short' not compared. */
export type Cut = 'ok' | 'missed' | 'split' | 'long' | 'short'

/** What the core made of one take. */
export interface TakeCut {
  cut: Cut
  /** The longest segment within the take's trim; null when missed. */
  movement: StreamMovement | null
}

/** What of a take is run. */
export type CutInput = Pick<PreparedTake, 'counts' | 'from' | 'to'>

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
    ? runPressed(core, take, taught)
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

/** With a button the take itself is the segment: it was recorded while a button was held. */
function runPressed(core: Core, take: CutInput, taught: boolean): StreamMovement[] {
  core.reset()
  core.push(take.counts.subarray(0, take.from * AXES))
  core.button(true)
  const during = core.push(take.counts.subarray(take.from * AXES, take.to * AXES))
  core.button(false)
  const after = core.push(take.counts.subarray(take.to * AXES, (take.to + 1) * AXES))
  return [...during, ...after].map((event) => ({
    event: taught ? core.teachEvent().event : event,
    query: wasCompared(event) ? core.query() : null,
    templateDistances: null,
  }))
}
