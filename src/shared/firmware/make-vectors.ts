import type { Core } from '../core/core'
import type { TrainedModel } from '../model/evaluation'
import type { FullLibrary } from '../model/library'
import { prepareLibrary } from '../training/prepare'
import { madeVectors } from './made-vectors'
import { observe } from './observations'
import { observedVectors } from './observed-vectors'
import { taughtVectors } from './taught-vectors'
import { runVector, type Vector } from './vector'

/**
 * Vectors for a model: samples as the board reads them, with the event log the phone's core gives.
 * Each gesture recognised, movements at both sides of the threshold, rejects, movements one after
 * the other, longest and shortest, clipped readings, grips whose roll cannot be known, and boards
 * and models that must be refused. The same library and model give the same vectors.
 * @param core loaded with this model afterwards
 */
export function makeVectors(core: Core, trained: TrainedModel, full: FullLibrary): Vector[] {
  const { model, bytes } = trained
  const observed = observe(core, model, bytes, prepareLibrary(full))
  const inputs = [...observedVectors(model, observed), ...madeVectors(model, observed)]
  inputs.push(...taughtVectors(core, trained, observed))
  const vectors = inputs.map((input) => ({ ...input, log: runVector(core, bytes, input) }))
  core.load(bytes)
  return vectors
}
