import type { FullLibrary, Library } from '../shared/model/library'
import type { Result } from '../shared/model/result'
import type { Connection } from './connection'
import { addWithSamples, findDamage, loadRecordings } from './recordings'
import { requireLibrary } from './required'
import { restoreLibrary } from './restore'
import { read, write } from './transaction'
import type { Unreadable } from './unreadable'

/** Libraries that are deleted, or that are not, oldest first. */
export async function listLibraries(
  connection: Connection,
  unreadable: Unreadable,
  isDeleted = false,
): Promise<Library[]> {
  const stored = await read(connection, ['libraries'], (tx) => tx.objectStore('libraries').getAll())
  return unreadable
    .sift(stored, 'library', restoreLibrary)
    .filter(({ deletedAt }) => (deletedAt !== null) === isDeleted)
    .map(({ library }) => library)
    .sort((a, b) => a.createdAt.localeCompare(b.createdAt) || a.id.localeCompare(b.id))
}

export function putLibrary(connection: Connection, library: Library): Promise<Result<null>> {
  return write(connection, ['libraries'], async (tx) => {
    const store = tx.objectStore('libraries')
    const before = await store.get(library.id)
    await store.put({ id: library.id, deletedAt: before?.deletedAt ?? null, library })
    return null
  })
}

/** Marks a library as deleted at a time, or, with null, as not deleted. */
export function markLibrary(
  connection: Connection,
  id: string,
  deletedAt: string | null,
): Promise<Result<null>> {
  return write(connection, ['libraries'], async (tx) => {
    const stored = await requireLibrary(tx, id)
    await tx.objectStore('libraries').put({ ...stored, deletedAt })
    return null
  })
}

/** A library with all its recordings that are not deleted; null when it is not there. */
export async function loadFull(
  connection: Connection,
  unreadable: Unreadable,
  libraryId: string,
): Promise<FullLibrary | null> {
  return read(connection, ['libraries', 'recordings', 'chunks'], async (tx) => {
    const found = await tx.objectStore('libraries').get(libraryId)
    if (found === undefined) return null
    const stored = unreadable.note(restoreLibrary(found), 'library', libraryId)
    if (stored === null || stored.deletedAt !== null) return null
    return {
      library: stored.library,
      recordings: await loadRecordings(tx, unreadable, libraryId),
    }
  })
}

export async function addFullLibrary(
  connection: Connection,
  full: FullLibrary,
): Promise<Result<null>> {
  const { library, recordings } = full
  const damage = findDamage(recordings)
  if (damage !== null) return damage
  const own = recordings.map(({ recording, samples }) => ({
    recording: { ...recording, libraryId: library.id },
    samples,
  }))
  return write(connection, ['libraries', 'recordings', 'chunks'], async (tx) => {
    await Promise.all([
      tx.objectStore('libraries').add({ id: library.id, deletedAt: null, library }),
      addWithSamples(tx, own),
    ])
    return null
  })
}
