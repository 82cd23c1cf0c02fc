import type { Core } from '../../core/core'
import type { RecogniserModel } from '../../model/recogniser-model'
import { median } from '../../statistics/summary'
import type { Example } from '../examples'
import type { Prepared } from '../prepare'
import { type Gathered, gatherFromBackground } from '../threshold-evidence'
import { clampThreshold, learnThreshold } from '../thresholds'
import type { MatcherFit } from './fit-matcher'

/** Logarithm at which the middle of all distances is put, so that rounding does not show. */
const MIDDLE_LOG = 12

/**
 * Sets the thresholds of a model with kernel features, in place, by the rule that templates have.
 * Distances of such a model are logarithms already, so the rule sees their exponentials.
 * @param examples with classes as indices of the model's gestures
 */
export function learnKernelThresholds(
  core: Core,
  prepared: Prepared,
  model: RecogniserModel,
  examples: readonly Example[],
  { heldOut, perLog }: MatcherFit,
): void {
  const rate = perLog ?? 1
  const shift = MIDDLE_LOG - rate * median(heldOut)
  const spread = (distance: number) => Math.exp(rate * distance + shift)
  const evidence = evidenceFrom(examples, heldOut, model.gestures.length)
  gatherFromBackground(core, prepared, model, evidence)
  for (const [index, gesture] of model.gestures.entries()) {
    const { within, foreign, between } = evidence[index]!
    const learned = learnThreshold({
      within: within.map(spread),
      foreign: foreign.map(spread),
      between: between.map(spread),
    })
    const wanted = Math.log(
      (learned ?? spread(median(heldOut))) * prepared.settings.thresholdFactor,
    )
    gesture.threshold = clampThreshold((wanted - shift) / rate)
  }
}

function evidenceFrom(
  examples: readonly Example[],
  heldOut: Float64Array,
  classCount: number,
): Gathered[] {
  const evidence = Array.from({ length: classCount }, (): Gathered => {
    return { within: [], foreign: [], between: [] }
  })
  for (const [i, example] of examples.entries()) {
    const row = heldOut.subarray(i * classCount, (i + 1) * classCount)
    const nearest = row.indexOf(Math.min(...row))
    for (const [g, distance] of row.entries()) {
      if (g === example.gesture) evidence[g]!.within.push(distance)
      else evidence[g]!.between.push(distance)
      if (g === nearest && g !== example.gesture) evidence[g]!.foreign.push(distance)
    }
  }
  return evidence
}
