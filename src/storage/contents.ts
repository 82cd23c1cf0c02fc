import type { Library, Recording } from '../shared/model/library'
import type { Result } from '../shared/model/result'
import type { Connection } from './connection'
import { storedFacts } from './recordings'
import { restoreLibrary } from './restore'
import type { ReadTransaction, WriteTransaction } from './schema'
import { read, write } from './transaction'
import type { Unreadable } from './unreadable'

/** A library and its recordings as they are at one moment. */
export interface LibraryFacts {
  library: Library
  recordings: Recording[]
}

/** Facts without samples, in one transaction; null when the library is not there. */
export function loadFacts(
  connection: Connection,
  unreadable: Unreadable,
  libraryId: string,
): Promise<LibraryFacts | null> {
  return read(connection, ['libraries', 'recordings'], (tx) =>
    factsWithin(tx, unreadable, libraryId),
  )
}

/** The same within a transaction. */
export async function factsWithin(
  tx: ReadTransaction | WriteTransaction,
  unreadable: Unreadable,
  libraryId: string,
): Promise<LibraryFacts | null> {
  const found = await tx.objectStore('libraries').get(libraryId)
  if (found === undefined) return null
  const stored = unreadable.note(restoreLibrary(found), 'library', libraryId)
  if (stored === null || stored.deletedAt !== null) return null
  return { library: stored.library, recordings: await storedFacts(tx, unreadable, libraryId) }
}

/**
 * Adds content ids to recordings as they are at this moment, and changes nothing else of them: samples
 * never change, so an id holds whatever was edited since it was worked out. Recordings that are gone,
 * or have theirs, are passed over.
 */
export function noteContents(
  connection: Connection,
  ids: ReadonlyMap<string, string>,
): Promise<Result<null>> {
  return write(connection, ['recordings'], async (tx) => {
    const store = tx.objectStore('recordings')
    await Promise.all(
      [...ids].map(async ([id, contentId]) => {
        const stored = await store.get(id)
        if (stored === undefined || stored.contentId !== undefined) return
        await store.put({ ...stored, contentId })
      }),
    )
    return null
  })
}
