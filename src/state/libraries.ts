import { DEFAULT_TRAINING, type FullLibrary, type Library } from '../shared/model/library'
import { fail, ok, type Result } from '../shared/model/result'
import type { Target } from '../shared/model/target'
import { NOTICES } from '../shared/words/en/notices'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { LibraryState } from './app'
import { newId } from './id'
import { checkName } from './names'
import { reidentify } from './reidentify'
import type { Shelf } from './shelf'

type Libraries = Pick<LibraryState, 'open' | 'create' | 'rename' | 'removeLibrary' | 'update'> & {
  /** Stores a whole library under new ids and opens it; nothing is stored on failure. */
  add(full: FullLibrary): Promise<Result<Library>>
}

/** Fetched with the first library that comes in: the start does without it. */
const loadMapping = async () => (await import('../shared/collect/map-gestures')).mapRecording

/** Acts on whole libraries. */
export function createLibraries(shelf: Shelf, defaultTarget: () => Target): Libraries {
  const { store, notices } = shelf
  const otherNames = (id: string | null) =>
    shelf.libraries.value.filter((one) => one.id !== id).map((one) => one.name)

  return {
    open: shelf.open,
    async create(name) {
      const checked = checkName(name, otherNames(null))
      if (!checked.ok) return checked
      const library: Library = {
        id: newId(),
        name: checked.value,
        createdAt: new Date().toISOString(),
        generated: false,
        gestures: [],
        target: defaultTarget(),
        training: { ...DEFAULT_TRAINING },
      }
      const stored = await store.putLibrary(library)
      if (!stored.ok) return stored
      await shelf.reload()
      await shelf.open(library.id)
      return ok(library)
    },
    async rename(name) {
      const library = shelf.current.value
      if (library === null) return fail('library/none', OPEN_LIBRARY.noneToRename)
      const checked = checkName(name, otherNames(library.id))
      if (!checked.ok) return checked
      const saved = await shelf.save({ ...library, name: checked.value })
      return saved ? ok(null) : fail('library/not-stored', NOTICES.nameNotStored)
    },
    async removeLibrary(id) {
      const library = shelf.libraries.value.find((one) => one.id === id)
      if (library === undefined || !shelf.check(await store.deleteLibrary(id))) return
      await shelf.reload()
      notices.say(NOTICES.libraryDeleted(library.name), async () => {
        if (!shelf.check(await store.restoreLibrary(id))) return false
        await shelf.reload()
        await shelf.open(id)
        return true
      })
    },
    async update(change) {
      const library = shelf.current.value
      if (library !== null) await shelf.save({ ...library, ...change })
    },
    async add(full) {
      const fresh = reidentify(full, otherNames(null), newId, await loadMapping())
      const stored = await store.addFullLibrary(fresh)
      if (!stored.ok) return stored
      await shelf.reload()
      await shelf.open(fresh.library.id)
      return ok(fresh.library)
    },
  }
}
