import type { Core } from '../../shared/core/core'
import { encodeModel } from '../../shared/format/model-bytes'
import {
  channelCount,
  type ModelNormaliser,
  type RecogniserModel,
} from '../../shared/model/recogniser-model'
import { AXES } from '../../shared/model/sample'
import type { Target } from '../../shared/model/target'
import { median } from '../../shared/statistics/summary'
import { type PerSensor, rmsOf } from '../../shared/training/amplitudes'
import { roomForTables } from '../../shared/training/budget'
import {
  ALL_AXES,
  cuttingModel,
  GYRO_AXES,
  LEVELLED_CHANNELS,
} from '../../shared/training/cutting-model'
import { distancesBetween } from '../../shared/training/examples'
import { fitMatcher, type MatcherFit } from '../../shared/training/kernel/fit-matcher'
import { warpOf } from '../../shared/training/matcher-search'
import type { CutSeries } from '../datasets/cut-series'
import { examplesOf, labelsOf } from './cut-matcher'

/** Every figure is measured on a model within this. */
export const MODEL_BYTES = 16384
const FIRST_LENGTH = 32
const OTHER_LENGTHS = [16, 24, 48, 64]
const BAND_SHARE = 0.1
/** Keeps noise from being blown up, as a share of the typical size. */
const FLOOR_SHARE = 0.02
const MOST_TEMPLATES_EACH = 16
const SEED = 1
/** A threshold that rejects nothing: every series of these sets is one of the gestures. */
const NO_THRESHOLD = 0xfffffffe

export interface CutTraining {
  model: RecogniserModel
  bytes: Uint8Array
  /** What was chosen on the training series. */
  says: string
}

/**
 * Chooses scaling, channels and length by the loss on training series with testers (or series) left
 * out, then fits templates, kernel features or both on all of them, within MODEL_BYTES.
 * @param target its sensitivities and rate are those of the series
 * @param channelMask axes that the set has; levelled channels are tried when `real` says that counts
 *   are those of the target's sensors
 */
export function trainCut(
  core: Core,
  target: Target,
  train: readonly CutSeries[],
  channelMask: number,
  real: boolean,
): CutTraining {
  const lossOf = (normaliser: ModelNormaliser) =>
    fitSeries(core, target, train, normaliser)?.fit.loss ?? Number.POSITIVE_INFINITY
  const scaled = leastBy(scalings(train, channelMask, real), lossOf)
  const lengths = [FIRST_LENGTH, ...OTHER_LENGTHS].map((length) => ({ ...scaled, length }))
  const normaliser = leastBy(lengths, lossOf)
  const fitted = fitSeries(core, target, train, normaliser)
  if (fitted === null) throw new RangeError('no model fits the budget')
  const bytes = encodeModel(fitted.model)
  const { length, scaleMode, channelMask: mask, centreMask } = normaliser
  const scale = scaleMode === 0 ? 'size kept' : 'size taken off'
  const says = `length ${length}, channels ${mask.toString(2)}, centred ${centreMask.toString(2)}, ${scale}, ${fitted.fit.kind}: ${fitted.fit.says}; held out ${fitted.fit.share.toFixed(3)}`
  return { model: fitted.model, bytes, says }
}

function fitSeries(
  core: Core,
  target: Target,
  series: readonly CutSeries[],
  normaliser: ModelNormaliser,
): { fit: MatcherFit; model: RecogniserModel } | null {
  const labels = labelsOf(series)
  const band = Math.max(1, Math.round(BAND_SHARE * normaliser.length))
  const matcher = { normaliser, band, cost: 0 as const }
  const examples = examplesOf(core, series, matcher, target)
  const fit = fitMatcher(core, {
    examples,
    classCount: labels.length,
    length: normaliser.length,
    channels: channelCount(normaliser),
    table: distancesBetween(core, examples, warpOf(matcher)),
    budgetBytes: roomForTables({ ...target, modelBudgetBytes: MODEL_BYTES }, labels.length),
    templatesPerGesture: MOST_TEMPLATES_EACH,
    seed: SEED,
    wish: 'auto',
  })
  if (fit === null) return null
  const gestures = labels.map((label, g) => {
    const chosen = fit.chosen[g]!.map((i) => examples[i]!)
    return {
      id: label,
      name: label,
      threshold: NO_THRESHOLD,
      templates: chosen.map((example) => example.query),
      templateTakeIds: chosen.map((example) => example.id),
    }
  })
  const { kernel } = fit
  return {
    fit,
    model: { ...cuttingModel(target, { normaliser }), band, cost: 0, gestures, kernel },
  }
}

function scalings(train: readonly CutSeries[], axes: number, real: boolean): ModelNormaliser[] {
  const sizes = train.map(({ counts }) => rmsOf(counts, 0, counts.length / AXES, [true, true]))
  const typical = [0, 1].map((sensor) => median(sizes.map((size) => size[sensor]!)))
  const masks = [
    [axes, axes],
    ...(axes === ALL_AXES ? [[axes, GYRO_AXES]] : []),
    ...(real ? [[axes | LEVELLED_CHANNELS, GYRO_AXES]] : []),
  ]
  return ([1, 0] as const).flatMap((scaleMode) =>
    masks.map(([channelMask = axes, centreMask = axes]): ModelNormaliser => {
      const share = scaleMode === 0 ? 1 : FLOOR_SHARE
      const floor = typical.map((size) => Math.max(1, Math.round(share * size))) as PerSensor
      const gain = [32, 32, 32, 32, 32, 32]
      const length = FIRST_LENGTH
      return { length, channelMask, centreMask, scaleMode, gain, gravityGain: 32, floor }
    }),
  )
}

function leastBy<T>(items: readonly T[], measure: (item: T) => number): T {
  const values = items.map(measure)
  return items[values.indexOf(Math.min(...values))]!
}
