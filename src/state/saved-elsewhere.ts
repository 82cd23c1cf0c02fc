import { computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { Recording } from '../shared/model/library'
import type { Shelf } from './shelf'

/** Which recordings of a library have been handed to the person as a file. */
export interface SavedElsewhere {
  /** Recordings of the current library that are on this phone only; generated ones do not count. */
  unsaved: ReadonlySignal<number>
  /** The same of any library. */
  unsavedOf(libraryId: string, recordings: readonly Recording[]): Promise<number>
  /** These recordings lie in a file outside this phone now, as after an export or an import. */
  mark(libraryId: string, recordingIds: readonly string[]): Promise<void>
}

/** Kept among the library's results: it goes with the library, and matters to nobody else. */
const KIND = 'results'
const itemId = (libraryId: string) => `${libraryId} saved elsewhere`

export function createSavedElsewhere(shelf: Shelf): SavedElsewhere {
  const { store, current, recordings } = shelf
  const saved = signal<{ libraryId: string; ids: ReadonlySet<string> } | null>(null)
  const read = async (libraryId: string): Promise<ReadonlySet<string>> => {
    const items = await store.listItems(KIND, libraryId)
    return idsIn(items.find(({ id }) => id === itemId(libraryId))?.value)
  }
  const libraryId = computed(() => current.value?.id ?? null)
  effect(() => {
    const id = libraryId.value
    saved.value = null
    if (id === null) return
    const show = (ids: ReadonlySet<string>) => {
      if (libraryId.peek() === id) saved.value = { libraryId: id, ids }
    }
    // Storage that fails is told where it is written; a reminder is not worth a message.
    read(id).then(show, () => undefined)
  })

  return {
    unsaved: computed(() =>
      saved.value === null ? 0 : countUnsaved(recordings.value, saved.value.ids),
    ),
    unsavedOf: async (id, all) => countUnsaved(all, await read(id)),
    mark: async (id, recordingIds) => {
      const ids = new Set([...(await read(id)), ...recordingIds])
      const keptAt = new Date().toISOString()
      const value = { recordingIds: [...ids] }
      const stored = await store.putItem(KIND, { id: itemId(id), libraryId: id, keptAt, value })
      if (stored.ok && libraryId.peek() === id) saved.value = { libraryId: id, ids }
    },
  }
}

function countUnsaved(recordings: readonly Recording[], saved: ReadonlySet<string>): number {
  return recordings.filter(({ id, source }) => source !== 'generated' && !saved.has(id)).length
}

function idsIn(value: unknown): ReadonlySet<string> {
  const ids = (value as { recordingIds?: unknown } | null | undefined)?.recordingIds
  return new Set(Array.isArray(ids) ? ids.filter((id) => typeof id === 'string') : [])
}
