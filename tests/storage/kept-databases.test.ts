import 'fake-indexeddb/auto'
import { openDB } from 'idb'
import { describe, expect, it } from 'vitest'
import type { Recording } from '../../src/shared/model/library'
import { joinBlocks } from '../../src/storage/chunk'
import { SCHEMA_STEPS, SCHEMA_VERSION } from '../../src/storage/migrations'
import { openStore } from '../../src/storage/open-store'
import {
  ITEM_KINDS,
  type ItemKind,
  type StoredChunk,
  type StoredLibrary,
} from '../../src/storage/schema'
import type { KeptItem } from '../../src/storage/store'
import { keptDatabase, layDown } from './kept-database'

/*
 * Databases as versions of the app left them, byte for byte, and not as today's code would write
 * them: database-VERSION.json. The present version's is kept for the next one.
 */
describe.each(SCHEMA_STEPS.map((_, step) => step + 1))(
  'a database that version %i left',
  (version) => {
    const kept = keptDatabase(version)
    const valuesOf = <T>(store: string) =>
      (kept.stores.find(({ name }) => name === store)?.values ?? []) as T[]
    const libraries = valuesOf<StoredLibrary>('libraries')
    const recordings = valuesOf<Recording>('recordings')
    const samplesOf = (id: string) =>
      joinBlocks(valuesOf<StoredChunk>('chunks').filter(({ recordingId }) => recordingId === id))

    async function opened(name: string) {
      await layDown(`${name}-${version}`, kept)
      return openStore(`${name}-${version}`)
    }

    it('comes to the present version', async () => {
      expect(kept.version).toBe(version)
      const store = await opened('present')
      store.close()
      const db = await openDB(`present-${version}`)
      expect(db.version).toBe(SCHEMA_VERSION)
      db.close()
    })

    it('gives every library and every recording as it was, deleted ones too', async () => {
      const store = await opened('whole')
      for (const { id, library, deletedAt } of libraries) {
        if (deletedAt !== null) await store.restoreLibrary(id)
        const deleted = recordings.filter((one) => one.libraryId === id && one.deletedAt !== null)
        await store.restoreRecordings(deleted.map((one) => one.id))
        const full = await store.loadFull(id)
        expect(full?.library).toEqual(library)
        const own = recordings.filter(({ libraryId }) => libraryId === id)
        expect(full?.recordings.map(({ recording }) => recording.id).sort()).toEqual(
          own.map((one) => one.id).sort(),
        )
        for (const { recording, samples } of full?.recordings ?? []) {
          const before = own.find((one) => one.id === recording.id)
          expect(recording).toEqual({ ...before, deletedAt: null })
          expect(samples).toEqual(samplesOf(recording.id))
        }
      }
      expect((await store.facts()).unreadableItems).toBe(0)
      store.close()
    })

    it('gives recordings that were cut off, to be kept', async () => {
      const store = await opened('cut-off')
      const [journal] = valuesOf<Recording>('journals')
      const samples = samplesOf(journal!.id)
      const sampleCount = samples.tMs.length
      expect(sampleCount).toBeGreaterThan(0)
      const recording = { ...journal, sampleCount, durationMs: samples.tMs.at(-1) }
      expect(await store.unfinished()).toEqual([{ recording, samples }])
      store.close()
    })

    it('gives marks of what was withdrawn in libraries that are gone', async () => {
      const store = await opened('marks')
      const marks = valuesOf<{ id: string; why: string }>('marks')
      expect(marks).toHaveLength(version < 3 ? 0 : 3)
      expect([...(await store.marks())]).toEqual(marks.map(({ id, why }) => [id, why]))
      store.close()
    })

    it('gives what was kept beside a library', async () => {
      const store = await opened('items')
      for (const kind of ITEM_KINDS) {
        const items = valuesOf<KeptItem>(kind satisfies ItemKind)
        expect(items.length).toBe(version === 1 ? 0 : 1)
        for (const item of items) {
          expect(await store.listItems(kind, item.libraryId)).toEqual([item])
        }
      }
      store.close()
    })
  },
)
