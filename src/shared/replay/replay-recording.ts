import { conditionRecording } from '../conditioning/condition-recording'
import { type Core, CoreError, type CoreTrace } from '../core/core'
import { encodeModel } from '../format/model-bytes'
import type { AccelSign } from '../model/library'
import type { RecogniserModel } from '../model/recogniser-model'
import type { Replay } from '../model/replay'
import { fail, ok, type Result } from '../model/result'
import { AXES, type SampleBlock } from '../model/sample'
import type { Target } from '../model/target'
import { addRest } from '../training/rest-tail'
import { runStream, type StreamMovement, wasCompared } from '../training/stream'
import { MEASURE_TROUBLE } from '../words/en/measure-trouble'
import { gestureDistances, templateCount } from './gesture-distances'

/**
 * Runs a recording through conditioning and the model, keeping what the core saw at every sample and
 * how far each movement was from every gesture.
 * Codes: 'replay/model' when the core refuses the model.
 */
export function replayRecording(
  core: Core,
  model: RecogniserModel,
  target: Target,
  samples: SampleBlock,
  accelSign: AccelSign,
): Result<Replay> {
  const conditioned = conditionRecording(samples, target, accelSign)
  const { rateHz } = conditioned
  const counts = addRest(conditioned.counts, rateHz)
  const length = counts.length / AXES
  const trace: CoreTrace = { energy: new Uint32Array(length), phase: new Uint8Array(length) }
  try {
    core.load(encodeModel(model))
  } catch (error) {
    if (!(error instanceof CoreError || error instanceof RangeError)) throw error
    return fail('replay/model', MEASURE_TROUBLE.modelCannotRun(error.message))
  }
  const movements = model.button
    ? runHeld(core, counts, model, trace)
    : runStream(core, counts, model.segmenter, { templateCount: templateCount(model), trace })
  return ok({
    rateHz,
    recordedCount: conditioned.counts.length / AXES,
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

/** A model with a button sees the recording as one press, from its first sample to its last. */
function runHeld(
  core: Core,
  counts: Int16Array,
  model: RecogniserModel,
  trace: CoreTrace,
): StreamMovement[] {
  core.reset()
  core.button(true)
  const during = core.push(counts, trace)
  core.button(false)
  const released = core.push(counts.slice(Math.max(0, counts.length - AXES)))
  return [...during, ...released].map((event) => ({
    event,
    query: wasCompared(event) ? core.query() : null,
    templateDistances: wasCompared(event)
      ? Array.from({ length: templateCount(model) }, (_, i) => core.templateDistance(i))
      : null,
  }))
}
