import type { Inventory } from '../shared/backup/plan-restore'
import type { Connection } from './connection'
import { read } from './transaction'

/** Ids of all libraries and recordings, deleted ones included. */
export function inventory(connection: Connection): Promise<Inventory> {
  return read(connection, ['libraries', 'recordings'], async (tx) => {
    const [libraries, recordings] = await Promise.all([
      tx.objectStore('libraries').getAll(),
      tx.objectStore('recordings').getAll(),
    ])
    return {
      libraries: libraries.map(({ id, deletedAt }) => ({ id, isDeleted: deletedAt !== null })),
      recordings: recordings.map(({ id, libraryId, deletedAt, contentId }) => ({
        id,
        libraryId,
        isDeleted: deletedAt !== null,
        ...(contentId === undefined ? {} : { contentId }),
      })),
    }
  })
}
