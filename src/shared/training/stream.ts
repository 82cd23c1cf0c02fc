import type { Core, CoreEvent, CoreTrace } from '../core/core'
import type { ModelSegmenter } from '../model/recogniser-model'
import { AXES } from '../model/sample'

/** A movement that the core cut out of a stream. */
export interface StreamMovement {
  event: CoreEvent
  /** The normalised segment, or null when it was too short or too long to be compared. */
  query: Int8Array | null
  /** Distance to each template of the loaded model, in model order; null as above. */
  templateDistances: number[] | null
}

export interface StreamOptions {
  /** Templates whose distances are wanted for each movement; 0 for none. */
  templateCount?: number
  trace?: CoreTrace
  /** Events with what the loaded core was taught put in; teaching must be open, without a session. */
  taught?: boolean
}

/**
 * Pushes a whole recording through the loaded model, from a reset, and keeps what the core knows of
 * each movement only until the next one ends.
 * @param counts n × 6
 * @param segmenter of the loaded model
 */
export function runStream(
  core: Core,
  counts: Int16Array,
  segmenter: ModelSegmenter,
  { templateCount = 0, trace, taught = false }: StreamOptions = {},
): StreamMovement[] {
  if (templateCount === 0 && !taught) {
    core.reset()
    return core.pushAll(counts, trace).map(({ event, query }) => {
      return { event, query: wasCompared(event) ? query : null, templateDistances: null }
    })
  }
  const samples = counts.length / AXES
  const step = samplesBetweenDecisions(segmenter)
  const movements: StreamMovement[] = []
  core.reset()
  for (let at = 0; at < samples; at += step) {
    const end = Math.min(samples, at + step)
    const events = core.push(
      counts.subarray(at * AXES, end * AXES),
      trace && { energy: trace.energy.subarray(at, end), phase: trace.phase.subarray(at, end) },
    )
    for (const event of events) {
      const said = taught ? core.teachEvent().event : event
      movements.push(describe(core, said, templateCount))
    }
  }
  return movements
}

/**
 * Two decisions are at least this far apart: between them a movement has to start (on_hold) and to
 * end (off_hold). Pushing no more at once lets the query of every decision be read.
 */
export function samplesBetweenDecisions(segmenter: ModelSegmenter): number {
  return Math.max(1, Math.min(32, segmenter.onHold + segmenter.offHold))
}

function describe(core: Core, event: CoreEvent, templateCount: number): StreamMovement {
  if (!wasCompared(event)) return { event, query: null, templateDistances: null }
  const templateDistances =
    templateCount === 0
      ? null
      : Array.from({ length: templateCount }, (_, index) => core.templateDistance(index))
  return { event, query: core.query(), templateDistances }
}

/** Whether the segment got as far as the matcher. */
export function wasCompared(event: Pick<CoreEvent, 'reason'>): boolean {
  return event.reason !== 'short' && event.reason !== 'long'
}
