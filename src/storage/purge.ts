import type { Connection } from './connection'
import { StorageError } from './failure'
import { markWithdrawals } from './marks'
import {
  chunksOf,
  ITEM_KINDS,
  type ItemKind,
  type StoredLibrary,
  type WriteTransaction,
} from './schema'
import { write } from './transaction'

/**
 * Removes for good, in one transaction, every library and recording deleted before a time (RFC
 * 3339 in UTC, as stored: such times sort as text). A library takes its recordings along; of what
 * was withdrawn in it marks stay.
 * @throws StorageError
 */
export async function purgeDeleted(connection: Connection, before: string): Promise<void> {
  const done = await write(
    connection,
    ['libraries', 'recordings', 'journals', 'chunks', 'marks', ...ITEM_KINDS],
    async (tx) => {
      const libraries = await deletedLibraries(tx, before)
      const libraryIds = libraries.map(({ id }) => id)
      const recordingIds = await recordingsToPurge(tx, before, libraryIds)
      const journalIds = (await tx.objectStore('journals').getAll())
        .filter(({ libraryId }) => libraryIds.includes(libraryId))
        .map(({ id }) => id)
      await Promise.all([
        ...libraries.map((one) => markWithdrawals(tx, one)),
        ...libraryIds.map((id) => tx.objectStore('libraries').delete(id)),
        ...recordingIds.map((id) => tx.objectStore('recordings').delete(id)),
        ...journalIds.map((id) => tx.objectStore('journals').delete(id)),
        ...[...recordingIds, ...journalIds].map((id) =>
          tx.objectStore('chunks').delete(chunksOf(id)),
        ),
        ...ITEM_KINDS.map((kind) => purgeItems(tx, kind, libraryIds)),
      ])
    },
  )
  // The tab that writes does it in its own time.
  if (!done.ok && done.code !== 'storage/reader') throw new StorageError(done.code, done.message)
}

async function deletedLibraries(tx: WriteTransaction, before: string): Promise<StoredLibrary[]> {
  const libraries = await tx.objectStore('libraries').getAll()
  return libraries.filter(({ deletedAt }) => typeof deletedAt === 'string' && deletedAt < before)
}

async function purgeItems(
  tx: WriteTransaction,
  kind: ItemKind,
  libraryIds: readonly string[],
): Promise<void> {
  const items = tx.objectStore(kind)
  const keys = await Promise.all(libraryIds.map((id) => items.index('library').getAllKeys(id)))
  await Promise.all(keys.flat().map((key) => items.delete(key)))
}

async function recordingsToPurge(
  tx: WriteTransaction,
  before: string,
  libraryIds: readonly string[],
): Promise<string[]> {
  const store = tx.objectStore('recordings')
  const [deleted, ...ofLibraries] = await Promise.all([
    store.index('deleted').getAllKeys(IDBKeyRange.upperBound(before, true)),
    ...libraryIds.map((id) => store.index('library').getAllKeys(id)),
  ])
  return [...new Set([deleted, ...ofLibraries].flat())]
}
