import type { Core, CoreTrace } from '../core/core'
import type { RecogniserModel } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import type { PreparedTake } from './prepare'
import { type StreamMovement, wasCompared } from './stream'

/** What of a take is run. */
export type CutInput = Pick<PreparedTake, 'counts' | 'from' | 'to' | 'whole'>

/**
 * How long before it moves a hand has the button down, and how long after it lets go, where nobody
 * knows: about a simple reaction time. An assumption, and told with the figures.
 */
export const HAND_MARGIN_MS = 150

/** Samples during which the button is down, [from, to). */
export interface PressedSpan {
  from: number
  to: number
}

export interface PressOptions {
  /** Templates whose distances are wanted; 0 for none. */
  templateCount?: number
  /** Of all counts of the take. */
  trace?: CoreTrace
  /** As in `StreamOptions`. */
  taught?: boolean
}

/**
 * Where the button is down in a take. A take of which a part counts was held there; in a whole one
 * the hand holds the button from a margin before the first motion to a margin after the last, by the
 * energy that the loaded core counts, and throughout when nothing moves: a pose was held.
 * @param model the one that is loaded
 */
export function pressedSpan(core: Core, take: CutInput, model: RecogniserModel): PressedSpan {
  const { from, to } = take
  if (take.whole !== true) return { from, to }
  const samples = take.counts.length / AXES
  const energy = new Uint32Array(samples)
  core.reset()
  core.push(take.counts, { energy, phase: new Uint8Array(samples) })
  const { onThreshold, offThreshold } = model.segmenter
  let first = from
  while (first < to && energy[first]! < onThreshold) first++
  if (first === to) return { from, to }
  let last = to - 1
  while (last > first && energy[last]! < offThreshold) last--
  const margin = Math.round((HAND_MARGIN_MS * model.board.rateMillihertz) / 1e6)
  return { from: Math.max(from, first - margin), to: Math.min(to, last + 1 + margin) }
}

/**
 * Runs a take through the loaded model with the button down where `pressedSpan` says, and on to the
 * take's end with it up. Everything that runs takes of a model with a button runs them here.
 */
export function runPressed(
  core: Core,
  take: CutInput,
  model: RecogniserModel,
  { templateCount = 0, trace, taught = false }: PressOptions = {},
): StreamMovement[] {
  const { from, to } = pressedSpan(core, take, model)
  const movements: StreamMovement[] = []
  const push = (start: number, end: number) => {
    const part = trace && {
      energy: trace.energy.subarray(start, end),
      phase: trace.phase.subarray(start, end),
    }
    for (const event of core.push(take.counts.subarray(start * AXES, end * AXES), part)) {
      const compared = wasCompared(event)
      movements.push({
        event: taught ? core.teachEvent().event : event,
        query: compared ? core.query() : null,
        templateDistances:
          compared && templateCount > 0
            ? Array.from({ length: templateCount }, (_, index) => core.templateDistance(index))
            : null,
      })
    }
  }
  core.reset()
  push(0, from)
  core.button(true)
  push(from, to)
  core.button(false)
  push(to, take.counts.length / AXES)
  return movements
}
