import { type ReadonlySignal, signal } from '@preact/signals'
import type { Evaluation, TrainedModel } from '../shared/model/evaluation'
import type { FullLibrary } from '../shared/model/library'
import { fail, type Result } from '../shared/model/result'
import { NOTICES } from '../shared/words/en/notices'
import type { Shelf } from './shelf'

/** Puts each trained model aside with how it did, for later comparison. */
export interface ModelKeeper {
  /** Counts what was kept since the page began. */
  changes: ReadonlySignal<number>
  /** @param measured how this library does, where that is known and fresh */
  trained(
    full: FullLibrary,
    trained: TrainedModel,
    measured: () => Promise<Evaluation | null>,
  ): Promise<void>
  /** Trains first where the model of this library is not kept yet. */
  evaluated(full: FullLibrary, evaluation: Evaluation, train: () => Promise<unknown>): Promise<void>
}

const NOT_KEPT = fail('models/not-kept', NOTICES.modelNotKept)

/** The code that keeps is loaded when there is something to keep; one thing after the other. */
export function createModelKeeper({ store, check }: Shelf, core: string): ModelKeeper {
  const changes = signal(0)
  let last: Promise<unknown> = Promise.resolve()
  const load = () => import('./kept-models')
  const inTurn = <T>(work: () => Promise<Result<T>>): Promise<Result<T>> => {
    const next = last.then(work).catch(() => NOT_KEPT)
    last = next.then((result) => {
      // A tab that only reads keeps nothing, and was not asked to.
      if (!result.ok && result.code === 'storage/reader') return
      if (check(result)) changes.value += 1
    })
    return next
  }
  const put = (full: FullLibrary, evaluation: Evaluation) =>
    inTurn(async () => (await load()).keepEvaluated(store, core, full, evaluation))
  return {
    changes,
    trained: async (full, model, measured) => {
      await inTurn(async () => (await load()).keepTrained(store, core, full, model))
      const evaluation = await measured().catch(() => null)
      if (evaluation !== null) await put(full, evaluation)
    },
    evaluated: async (full, evaluation, train) => {
      const found = await put(full, evaluation)
      if (!found.ok || found.value) return
      await train()
      await put(full, evaluation)
    },
  }
}
