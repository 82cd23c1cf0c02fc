import { type KeptModel, prunable } from '../shared/compare/kept-model'
import { basisOf } from '../shared/compare/model-basis'
import { keptModelOf } from '../shared/format/kept-model-schema'
import { sha256Hex } from '../shared/format/sha256'
import type { Evaluation, TrainedModel } from '../shared/model/evaluation'
import type { FullLibrary } from '../shared/model/library'
import { matcherKind } from '../shared/model/recogniser-model'
import { ok, type Result } from '../shared/model/result'
import type { KeptItem, Store } from '../storage/store'
import { fingerprint } from './fingerprint'
import { newId } from './id'

/** A model as it lies in the store. */
export interface KeptEntry {
  id: string
  /** When it was trained, RFC 3339 in UTC. */
  keptAt: string
  model: KeptModel
}

/** Models kept of a library, newest first; what cannot be read is left out. */
export async function readModels(store: Store, libraryId: string): Promise<KeptEntry[]> {
  const items = await store.listItems('models', libraryId)
  const entries = items.flatMap(({ id, keptAt, value }): KeptEntry[] => {
    const model = keptModelOf(value)
    return model === null ? [] : [{ id, keptAt, model }]
  })
  return entries.reverse()
}

/**
 * Keeps a trained model, unless one of the same library and core is kept; the oldest of too many go.
 * @param core which core trained it
 */
export async function keepTrained(
  store: Store,
  core: string,
  full: FullLibrary,
  trained: TrainedModel,
): Promise<Result<null>> {
  const { id: libraryId } = full.library
  const models = await readModels(store, libraryId)
  const model = modelOf(core, full, trained)
  if (models.some((entry) => isSame(entry.model, model))) return ok(null)
  const keptAt = new Date().toISOString()
  const item: KeptItem = { id: newId(), libraryId, keptAt, value: model }
  const put = await store.putItem('models', item)
  if (!put.ok) return put
  const surplus = prunable([...models, { id: item.id, keptAt, model }])
  return store.removeItems(
    'models',
    surplus.map(({ id }) => id),
  )
}

/** Puts a measurement beside the model of the same library and core; false when none is kept. */
export async function keepEvaluated(
  store: Store,
  core: string,
  full: FullLibrary,
  evaluation: Evaluation,
): Promise<Result<boolean>> {
  const { id: libraryId } = full.library
  const libraryHash = hashOf(full)
  const models = await readModels(store, libraryId)
  const found = models.find(({ model }) => isSame(model, { core, libraryHash }))
  if (found === undefined) return ok(false)
  const evaluations = { ...found.model.evaluations, [evaluation.holdout]: evaluation }
  const put = await putModel(store, libraryId, { ...found, model: { ...found.model, evaluations } })
  return put.ok ? ok(true) : put
}

export function putModel(
  store: Store,
  libraryId: string,
  { id, keptAt, model }: KeptEntry,
): Promise<Result<null>> {
  return store.putItem('models', { id, libraryId, keptAt, value: model })
}

type Origin = Pick<KeptModel, 'core' | 'libraryHash'>

function isSame(a: Origin, b: Origin): boolean {
  return a.core === b.core && a.libraryHash === b.libraryHash
}

function hashOf({ library, recordings }: FullLibrary): string {
  const facts = recordings.map(({ recording }) => recording)
  return sha256Hex(new TextEncoder().encode(fingerprint(library, facts)))
}

function modelOf(core: string, full: FullLibrary, trained: TrainedModel): KeptModel {
  return {
    ...basisOf(core, full),
    hash: trained.hash,
    bytes: trained.bytes,
    libraryHash: hashOf(full),
    matcher: matcherKind(trained.model),
    tableBytes: trained.tableBytes,
    ramBytes: trained.ramBytes,
    pinned: false,
    evaluations: {},
  }
}
