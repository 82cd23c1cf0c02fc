import type { Gesture } from '../shared/model/library'
import { fail, ok } from '../shared/model/result'
import { NOTICES } from '../shared/words/en/notices'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { LibraryState } from './app'
import { newId } from './id'
import { checkName } from './names'
import type { Shelf } from './shelf'

type Gestures = Pick<LibraryState, 'addGesture' | 'renameGesture' | 'removeGesture'>

const NO_LIBRARY = fail('gesture/no-library', OPEN_LIBRARY.none)

/** As many as a model can hold: MVW_MAX_GESTURES. */
export const MOST_GESTURES = 64
const FULL = fail('gesture/full', NOTICES.gesturesFull(MOST_GESTURES))

/** Acts on the gestures of the current library. */
export function createGestures(shelf: Shelf): Gestures {
  const { store, notices } = shelf
  const otherNames = (gestures: Gesture[], id: string | null) =>
    gestures.filter((one) => one.id !== id).map((one) => one.name)

  return {
    async addGesture(name) {
      const library = shelf.current.value
      if (library === null) return NO_LIBRARY
      if (library.gestures.length >= MOST_GESTURES) return FULL
      const checked = checkName(name, otherNames(library.gestures, null))
      if (!checked.ok) return checked
      const gesture: Gesture = { id: newId(), name: checked.value, note: '' }
      const saved = await shelf.save({ ...library, gestures: [...library.gestures, gesture] })
      return saved ? ok(gesture) : fail('gesture/not-stored', NOTICES.gestureNotStored)
    },
    async renameGesture(id, name) {
      const library = shelf.current.value
      if (library === null) return NO_LIBRARY
      const checked = checkName(name, otherNames(library.gestures, id))
      if (!checked.ok) return checked
      const gestures = library.gestures.map((one) =>
        one.id === id ? { ...one, name: checked.value } : one,
      )
      const saved = await shelf.save({ ...library, gestures })
      return saved ? ok(null) : fail('gesture/not-stored', NOTICES.nameNotStored)
    },
    async removeGesture(id) {
      const library = shelf.current.value
      const place = library?.gestures.findIndex((one) => one.id === id) ?? -1
      const gesture = library?.gestures[place]
      if (library === null || gesture === undefined) return
      const takeIds = shelf.recordings.value
        .filter((one) => one.kind === 'take' && one.gestureId === id)
        .map((one) => one.id)
      // Takes first: were the second step to fail, a gesture without takes is plain to see.
      if (!shelf.check(await store.deleteRecordings(takeIds))) return
      await shelf.save({ ...library, gestures: library.gestures.filter((one) => one.id !== id) })
      await shelf.reloadRecordings()
      notices.say(NOTICES.gestureDeleted(gesture.name, takeIds.length), () =>
        putBack(shelf, library.id, gesture, place, takeIds),
      )
    },
  }
}

async function putBack(
  shelf: Shelf,
  libraryId: string,
  gesture: Gesture,
  place: number,
  takeIds: string[],
): Promise<boolean> {
  const library = shelf.libraries.value.find((one) => one.id === libraryId)
  if (library === undefined) {
    shelf.notices.trouble(OPEN_LIBRARY.undoThatFirst)
    return false
  }
  const gestures = [...library.gestures]
  gestures.splice(place, 0, gesture)
  if (!(await shelf.save({ ...library, gestures }))) return false
  const isBack = shelf.check(await shelf.store.restoreRecordings(takeIds))
  await shelf.reloadRecordings()
  return isBack
}
