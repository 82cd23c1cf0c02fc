import { computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import { changesBetween } from '../shared/compare/changes'
import { type Comparison, compareEvaluations } from '../shared/compare/compare-evaluations'
import type { KeptModel } from '../shared/compare/kept-model'
import type { Holdout } from '../shared/model/evaluation'
import { fail, type Result } from '../shared/model/result'
import { KEPT_MODELS } from '../shared/words/en/kept-models'
import { type KeptEntry, putModel, readModels } from './kept-models'
import type { ModelKeeper } from './model-keeper'
import type { Shelf } from './shelf'

export type { KeptEntry }

/** Models kept of the open library, and what two of them have apart. */
export interface ModelsState {
  /** Newest first; null until they are read. */
  models: ReadonlySignal<KeptEntry[] | null>
  pin(id: string, pinned: boolean): Promise<void>
  /** Can be undone for the visit. */
  remove(id: string): Promise<void>
}

export function createModels(shelf: Shelf, keeper: ModelKeeper): ModelsState {
  const entries = signal<{ libraryId: string; models: KeptEntry[] } | null>(null)
  const owner = () => shelf.current.value?.id ?? null
  const reload = async (libraryId: string) => {
    const models = await readModels(shelf.store, libraryId)
    entries.value = { libraryId, models }
  }
  effect(() => {
    void keeper.changes.value
    const id = owner()
    if (id !== null) void reload(id)
  })
  const change = async (act: (libraryId: string) => Promise<Result<null>>) => {
    const id = shelf.current.peek()?.id
    if (id === undefined) return
    shelf.check(await act(id))
    await reload(id)
  }
  return {
    models: computed(() => {
      const found = entries.value
      return found?.libraryId === owner() ? (found?.models ?? null) : null
    }),
    pin: (id, pinned) =>
      change(async (libraryId) => {
        const entry = entries.peek()?.models.find((one) => one.id === id)
        if (entry === undefined) return fail('models/missing', KEPT_MODELS.gone)
        return putModel(shelf.store, libraryId, { ...entry, model: { ...entry.model, pinned } })
      }),
    remove: async (id) => {
      const entry = entries.peek()?.models.find((one) => one.id === id)
      if (entry === undefined) return
      const libraryId = entries.peek()!.libraryId
      await change(() => shelf.store.removeItems('models', [id]))
      shelf.notices.say(KEPT_MODELS.removed, async () => {
        const isBack = shelf.check(await putModel(shelf.store, libraryId, entry))
        await reload(libraryId)
        return isBack
      })
    },
  }
}

/** What two models have apart on the takes that both held out, and what changed between them. */
export interface ModelsCompared {
  comparison: Comparison
  changes: string[]
}

/** @returns failures 'compare/not-measured' and those of `compareEvaluations` */
export function compareModels(
  first: KeptModel,
  second: KeptModel,
  holdout: Holdout,
): Result<ModelsCompared> {
  const [a, b] = [first.evaluations[holdout], second.evaluations[holdout]]
  if (a === undefined || b === undefined) {
    return fail('compare/not-measured', KEPT_MODELS.notMeasuredAlike)
  }
  const takesOf = (model: KeptModel) => new Set(model.takes.map(({ id }) => id))
  const compared = compareEvaluations(
    { evaluation: a, takeIds: takesOf(first) },
    { evaluation: b, takeIds: takesOf(second) },
  )
  if (!compared.ok) return compared
  return {
    ok: true,
    value: { comparison: compared.value, changes: changesBetween(first, second) },
  }
}
