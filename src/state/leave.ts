import { undoChange } from '../shared/collect/undo-change'
import type { Leave } from '../shared/collect/withdraw'
import type { Library, Recording } from '../shared/model/library'
import { ok } from '../shared/model/result'
import type { Shelf } from './shelf'
import { undoPlanned } from './undo-planned'

const NOTHING = { add: [], update: [], remove: [], restore: [] }

/**
 * Recordings go together with what remembers that they did, in one step, and come back by undo. Planned
 * and undone on what is stored in that moment: what was edited since stays.
 * @param act says what goes, of the library and its recordings as they are
 * @param said what the notice says
 */
export async function leaveTogether(
  shelf: Shelf,
  libraryId: string,
  act: (library: Library, recordings: readonly Recording[], at: string) => Leave,
  said: string,
): Promise<void> {
  let before: Library | undefined
  const at = new Date().toISOString()
  const stored = await shelf.store.planChange(libraryId, ({ library, recordings }) => {
    before = library
    const left = act(library, recordings, at)
    return ok({ ...NOTHING, library: left.library, remove: left.removeIds })
  })
  if (!shelf.check(stored) || before === undefined) return
  const left = { before, after: stored.value.library, removed: stored.value.remove }
  await shelf.reload()
  shelf.notices.say(said, () => comeBack(shelf, left))
}

/** @returns whether it was done */
function comeBack(
  shelf: Shelf,
  { before, after, removed }: { before: Library; after: Library; removed: string[] },
): Promise<boolean> {
  return undoPlanned(shelf, before.id, ({ library }) =>
    ok({ ...NOTHING, library: undoChange(library, before, after), restore: removed }),
  )
}
