import type { Core } from '../core/core'
import { encodeModel } from '../format/model-bytes'
import type { RecogniserModel } from '../model/recogniser-model'
import { apartness, type Example } from './examples'
import type { Prepared } from './prepare'
import { runStream } from './stream'
import { clampThreshold, learnThreshold, type ThresholdEvidence } from './thresholds'

/** Chosen templates among the examples, with the distances between all of them. */
export interface Choice {
  table: Float64Array
  examples: readonly Example[]
  /** For each gesture of the library, indices of examples. */
  chosen: readonly number[][]
}

/** Sets the thresholds of the model's gestures, in place. */
export function learnThresholds(
  core: Core,
  prepared: Prepared,
  model: RecogniserModel,
  choice: Choice,
): void {
  const inModel = prepared.gestures.map(({ id }) => model.gestures.findIndex((g) => g.id === id))
  const evidence = model.gestures.map(() => ({
    within: [] as number[],
    foreign: [] as number[],
    between: [] as number[],
  }))
  gatherFromTakes(choice, (gesture) => evidence[inModel[gesture]!])
  gatherFromBackground(core, prepared, model, evidence)
  const learned = evidence.map(learnThreshold)
  const known = learned.filter((value) => value !== null)
  // A lone take with nothing to compare it to: as generous as the most generous gesture.
  const fallback = known.length > 0 ? Math.max(...known) : 0
  for (const [index, gesture] of model.gestures.entries()) {
    const threshold = learned[index] ?? fallback
    gesture.threshold = clampThreshold(threshold * prepared.settings.thresholdFactor)
  }
}

/** Evidence while it is gathered. */
export type Gathered = { [K in keyof ThresholdEvidence]: number[] }

function gatherFromTakes(choice: Choice, evidenceOf: (gesture: number) => Gathered | undefined) {
  const apart = apartness(choice.examples)
  for (const [i, example] of choice.examples.entries()) {
    const nearest = choice.chosen.map((templates) => nearestOf(choice, templates, i, apart))
    const own = nearestOwn(choice, i, apart)
    evidenceOf(example.gesture)?.within.push(own)
    const answered = nearest.indexOf(Math.min(...nearest))
    for (const [gesture, distance] of nearest.entries()) {
      if (gesture === example.gesture || !Number.isFinite(distance)) continue
      evidenceOf(gesture)?.between.push(distance)
      if (gesture === answered) evidenceOf(gesture)?.foreign.push(distance)
    }
  }
}

/**
 * Where all templates of the gesture come from this very tester, their other takes have to do; a
 * template's distance to itself never counts.
 */
function nearestOwn(choice: Choice, i: number, apart: (i: number, j: number) => boolean): number {
  const templates = choice.chosen[choice.examples[i]!.gesture]!
  const strict = nearestOf(choice, templates, i, apart)
  return Number.isFinite(strict) ? strict : nearestOf(choice, templates, i, (a, b) => a !== b)
}

function nearestOf(
  { table, examples }: Choice,
  templates: readonly number[],
  i: number,
  allowed: (i: number, j: number) => boolean,
): number {
  let least = Number.POSITIVE_INFINITY
  for (const template of templates) {
    if (allowed(i, template)) least = Math.min(least, table[i * examples.length + template]!)
  }
  return least
}

/** Movements in the background are foreign to the gesture that the core finds nearest. */
export function gatherFromBackground(
  core: Core,
  prepared: Prepared,
  model: RecogniserModel,
  evidence: readonly Gathered[],
): void {
  if (model.button || prepared.backgrounds.length === 0) return
  core.load(encodeModel(model))
  for (const { counts } of prepared.backgrounds) {
    for (const { event } of runStream(core, counts, model.segmenter)) {
      if (event.gesture !== null && event.distance !== null) {
        evidence[event.gesture]?.foreign.push(event.distance)
      }
    }
  }
}
