import type { Evaluation, Holdout } from '../model/evaluation'
import type { MatcherKind } from '../model/recogniser-model'
import type { ModelBasis } from './model-basis'

/** A trained model as it is kept beside its library, with what it was made of and how it did. */
export interface KeptModel extends ModelBasis {
  /** SHA-256 of the model bytes, hex. */
  hash: string
  bytes: Uint8Array
  /** SHA-256, hex, of everything in the library that training reads. */
  libraryHash: string
  matcher: MatcherKind
  tableBytes: number
  ramBytes: number
  /** Kept when others are pruned. */
  pinned: boolean
  /** By what was held out; none until it is measured. */
  evaluations: Partial<Record<Holdout, Evaluation>>
}

/** Models kept of a library besides the pinned ones. */
export const MOST_KEPT = 20

/** Which of the models are too many, oldest first; `keptAt` as in RFC 3339. */
export function prunable<M extends { keptAt: string; model: Pick<KeptModel, 'pinned'> }>(
  models: readonly M[],
): M[] {
  const loose = models.filter(({ model }) => !model.pinned)
  const byAge = [...loose].sort((a, b) => (a.keptAt < b.keptAt ? -1 : 1))
  return byAge.slice(0, Math.max(0, byAge.length - MOST_KEPT))
}
