import type { Result } from '../shared/model/result'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { LibraryFacts } from '../storage/contents'
import type { LibraryChange } from '../storage/store'
import type { Shelf } from './shelf'

/**
 * Takes a step back on what is stored in this moment. Where the library itself was deleted since, that
 * is to be undone first.
 * @returns whether it was done
 */
export async function undoPlanned(
  shelf: Shelf,
  libraryId: string,
  plan: (now: LibraryFacts) => Result<LibraryChange>,
): Promise<boolean> {
  const undone = await shelf.store.planChange(libraryId, plan)
  if (!undone.ok && undone.code === 'storage/no-library') {
    shelf.notices.trouble(OPEN_LIBRARY.undoThatFirst)
    return false
  }
  const isDone = shelf.check(undone)
  await shelf.reload()
  return isDone
}
