import { conditionRecording } from '../conditioning/condition-recording'
import { type Core, CoreError, type CoreTrace } from '../core/core'
import { encodeModel } from '../format/model-bytes'
import type { AccelSign, Trim } from '../model/library'
import type { RecogniserModel } from '../model/recogniser-model'
import type { Replay } from '../model/replay'
import { fail, ok, type Result } from '../model/result'
import { AXES, type SampleBlock } from '../model/sample'
import type { Target } from '../model/target'
import { windowOf } from '../training/prepare'
import { runPressed } from '../training/press'
import { addRest } from '../training/rest-tail'
import { runStream } from '../training/stream'
import { MEASURE_TROUBLE } from '../words/en/measure-trouble'
import { gestureDistances, templateCount } from './gesture-distances'

/**
 * Runs a recording through conditioning and the model, keeping what the core saw at every sample and
 * how far each movement was from every gesture. A model with a button sees a take held as training
 * and evaluation hold it (`pressedSpan`); nobody presses it in a background.
 * @param trim of a take, null for a whole one, 'background' for no take
 * Codes: 'replay/model' when the core refuses the model.
 */
export function replayRecording(
  core: Core,
  model: RecogniserModel,
  target: Target,
  samples: SampleBlock,
  accelSign: AccelSign,
  trim: Trim | null | 'background' = null,
): Result<Replay> {
  const conditioned = conditionRecording(samples, target, accelSign)
  const { rateHz } = conditioned
  const counts = addRest(conditioned.counts, rateHz)
  const recordedCount = conditioned.counts.length / AXES
  const length = counts.length / AXES
  const trace: CoreTrace = { energy: new Uint32Array(length), phase: new Uint8Array(length) }
  try {
    core.load(encodeModel(model))
  } catch (error) {
    if (!(error instanceof CoreError || error instanceof RangeError)) throw error
    return fail('replay/model', MEASURE_TROUBLE.modelCannotRun(error.message))
  }
  const options = { templateCount: templateCount(model), trace }
  const movements =
    model.button && trim !== 'background'
      ? runPressed(
          core,
          { counts, ...windowOf(trim, samples, target, recordedCount) },
          model,
          options,
        )
      : runStream(core, counts, model.segmenter, options)
  return ok({
    rateHz,
    recordedCount,
    counts,
    ...trace,
    onThreshold: model.segmenter.onThreshold,
    offThreshold: model.segmenter.offThreshold,
    events: movements.map(({ event }) => event),
    gestureDistances: movements.map(
      ({ templateDistances }) => templateDistances && gestureDistances(model, templateDistances),
    ),
    queries: movements.map(({ query }) => query),
  })
}
