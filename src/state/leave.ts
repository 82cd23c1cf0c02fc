import { undoChange } from '../shared/collect/undo-change'
import type { Leave } from '../shared/collect/withdraw'
import type { Library } from '../shared/model/library'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { Shelf } from './shelf'

/**
 * Recordings go together with what remembers that they did, in one step, and come back by undo.
 * @param before the library as it is
 * @param said what the notice says
 */
export async function leaveTogether(
  shelf: Shelf,
  before: Library,
  { library: after, removeIds }: Leave,
  said: string,
): Promise<void> {
  const nothing = { add: [], update: [] }
  const stored = await shelf.store.changeLibrary({
    library: after,
    ...nothing,
    remove: removeIds,
    restore: [],
  })
  if (!shelf.check(stored)) return
  await shelf.reload()
  shelf.notices.say(said, async () => {
    const now = shelf.libraries.peek().find(({ id }) => id === before.id)
    if (now === undefined) {
      shelf.notices.trouble(OPEN_LIBRARY.undoThatFirst)
      return false
    }
    const library = undoChange(now, before, after)
    const undone = { library, ...nothing, remove: [], restore: removeIds }
    const isDone = shelf.check(await shelf.store.changeLibrary(undone))
    await shelf.reload()
    return isDone
  })
}
