import type { Recording } from '../shared/model/library'
import { STORAGE_TROUBLE } from '../shared/words/en/storage-trouble'
import { StorageError } from './failure'
import type { StoredLibrary, WriteTransaction } from './schema'

/** What ends a transaction whose library is not there. */
export function noLibrary(): StorageError {
  return new StorageError('storage/no-library', STORAGE_TROUBLE.noLibrary)
}

/** @throws StorageError, which ends the transaction, when the library is not there. */
export async function requireLibrary(tx: WriteTransaction, id: string): Promise<StoredLibrary> {
  const stored = await tx.objectStore('libraries').get(id)
  if (stored !== undefined) return stored
  throw noLibrary()
}

/** @throws StorageError, which ends the transaction, when the recording is not there. */
export async function requireRecording(tx: WriteTransaction, id: string): Promise<Recording> {
  const stored = await tx.objectStore('recordings').get(id)
  if (stored !== undefined) return stored
  throw new StorageError('storage/no-recording', STORAGE_TROUBLE.noRecording)
}
