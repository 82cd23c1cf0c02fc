import type { Core, CoreEvent } from '../core/core'
import type { RecogniserModel } from '../model/recogniser-model'
import { AXES } from '../model/sample'
import type { Prepared } from '../training/prepare'
import { type PressedSpan, pressedSpan } from '../training/press'
import { bentTake } from './bent-take'
import type { VectorStep } from './vector'

/** A recording as the board would have read it, and what the model said to it. */
export interface Observation {
  /** Index of the performed gesture in the model; null for background and untrained gestures. */
  truth: number | null
  steps: VectorStep[]
  events: CoreEvent[]
  /** Which recording this is, for people. */
  from: string
}

/** Samples before and after a segment that are cut out of a background with it. */
const CONTEXT_SAMPLES = 100

/** Runs every recording of the library through the model, as a stream. */
export function observe(
  core: Core,
  model: RecogniserModel,
  modelBytes: Uint8Array,
  prepared: Prepared,
): Observation[] {
  core.load(modelBytes)
  const run = (truth: number | null, from: string, steps: VectorStep[]): Observation => {
    core.reset()
    const events = steps.flatMap((step) => {
      if ('samples' in step) return core.push(step.samples)
      if ('button' in step) core.button(step.button)
      return []
    })
    return { truth, from, steps, events }
  }
  const indexOf = new Map(model.gestures.map(({ id }, index) => [id, index]))
  const takes = prepared.takes.map((take) =>
    run(
      indexOf.get(take.take.gestureId) ?? null,
      `take ${take.take.id} of tester ${take.take.testerCode}`,
      model.button ? pressed(take.counts, pressedSpan(core, take, model)) : [samples(take.counts)],
    ),
  )
  const bent = (seen: Observation[]): Observation[] => {
    if (seen.some(isFar)) return []
    const hit = takes.filter(isHit).sort((a, b) => nearness(b.events[0]!) - nearness(a.events[0]!))
    const found = hit[0] && bentTake(hit[0], (from, steps) => run(null, from, steps))
    return found ? [found] : []
  }
  if (model.button) return [...takes, ...bent(takes)]
  const backgrounds = prepared.backgrounds.flatMap(({ background, counts }) => {
    const whole = run(null, '', [samples(counts)])
    const from = `background ${background.id} of tester ${background.testerCode}, from sample`
    const cutOut = (event: CoreEvent) =>
      run(null, `${from} ${contextFrom(event)}`, [samples(around(counts, event))])
    return nearestAndFarthest(whole.events, cutOut)
  })
  const seen = [...takes, ...backgrounds]
  return [...seen, ...bent(seen)]
}

/** Whether the recording gave exactly one event and that was its gesture. */
export function isHit({ truth, events }: Observation): boolean {
  return events.length === 1 && events[0]?.kind === 'gesture' && events[0].gesture === truth
}

/** Whether the recording gave one movement only, and that one was no gesture. */
function isFar({ events }: Observation): boolean {
  return events.length === 1 && events[0]?.reason === 'far'
}

/**
 * Of the rejects of a long background the one nearest to being taken and the farthest, each of those
 * that are the only event where they are cut out, so that a vector shows that one thing.
 */
function nearestAndFarthest(
  events: CoreEvent[],
  cutOut: (event: CoreEvent) => Observation,
): Observation[] {
  const alone = events
    .filter((event) => event.reason === 'far')
    .sort((a, b) => nearness(a) - nearness(b))
    .map(cutOut)
    .filter(isFar)
  return alone.length <= 2 ? alone : [alone[0]!, alone[alone.length - 1]!]
}

/** Distance as a share of the threshold: 1 is the border between gesture and reject. */
export function nearness(event: CoreEvent): number {
  return (event.distance ?? Number.POSITIVE_INFINITY) / Math.max(1, event.threshold)
}

function samples(counts: Int16Array): VectorStep {
  return { samples: counts }
}

/** The button is held from one sample to another, as in a take recorded by button. */
function pressed(counts: Int16Array, { from, to }: PressedSpan): VectorStep[] {
  return [
    samples(counts.subarray(0, from * AXES)),
    { button: true },
    samples(counts.subarray(from * AXES, to * AXES)),
    { button: false },
    samples(counts.subarray(to * AXES)),
  ]
}

function contextFrom(event: CoreEvent): number {
  return Math.max(0, event.start - CONTEXT_SAMPLES)
}

function around(counts: Int16Array, event: CoreEvent): Int16Array {
  return counts.subarray(contextFrom(event) * AXES, (event.end + CONTEXT_SAMPLES) * AXES)
}
