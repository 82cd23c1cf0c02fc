import type { Identified } from '../../shared/collect/collection'
import type { MergeChange } from '../../shared/collect/merge'
import { undoChange, undoRecording } from '../../shared/collect/undo-change'
import type { Library, Recording } from '../../shared/model/library'
import { ok } from '../../shared/model/result'
import type { LibraryFacts } from '../../storage/contents'
import type { LibraryChange } from '../../storage/store'
import type { Shelf } from '../shelf'
import { undoPlanned } from '../undo-planned'

/** What was stored when files were brought home, and what was there before. */
export interface Brought {
  before: Library
  own: readonly Identified[]
  change: MergeChange
}

/**
 * What was stored goes again; what was changed elsewhere since stays, with the gestures it needs.
 * @returns whether it was done
 */
export function undoBring(shelf: Shelf, brought: Brought): Promise<boolean> {
  return undoPlanned(shelf, brought.before.id, (now) => ok(undoing(now, brought)))
}

function undoing(
  { library: now, recordings: stored }: LibraryFacts,
  { before, own, change }: Brought,
): LibraryChange {
  const gestures = new Set(now.gestures.map(({ id }) => id))
  // A gesture may have been deleted since: nothing goes back under it.
  const canBe = (one: Recording) => one.kind === 'background' || gestures.has(one.gestureId)
  const known = new Map(stored.map((one) => [one.id, one]))
  const wasOwn = new Map(own.map((one) => [one.id, one]))
  const update = change.update.flatMap((after): Recording[] => {
    const was = wasOwn.get(after.id)
    const undone = was && undoRecording(known.get(after.id) ?? after, was, after)
    return undone !== undefined && canBe(undone) ? [undone] : []
  })
  const remove = change.add.map(({ recording }) => recording.id)
  const removed = new Set(remove)
  const restore = change.remove.filter((id) => {
    const was = wasOwn.get(id)
    return was !== undefined && canBe(was)
  })
  const staying = new Map([...stored, ...update].map((one) => [one.id, one]))
  const used = new Set(
    [...staying.values()].flatMap((one) =>
      one.kind === 'take' && !removed.has(one.id) ? [one.gestureId] : [],
    ),
  )
  const library = undoChange(now, before, change.library, used)
  return { library, add: [], update, remove, restore }
}
