import { type Failure, fail } from '../shared/model/result'
import { STORAGE_TROUBLE } from '../shared/words/en/storage-trouble'

/** A failure of storage as an error: thrown by reads, turned into a `Failure` by writes. */
export class StorageError extends Error {
  readonly code: string
  constructor(code: string, message: string, options?: ErrorOptions) {
    super(message, options)
    this.name = 'StorageError'
    this.code = code
  }
}

const SENTENCES: Record<string, [code: string, message: string]> = {
  QuotaExceededError: ['storage/full', STORAGE_TROUBLE.full],
  ConstraintError: ['storage/exists', STORAGE_TROUBLE.twice],
  DataCloneError: ['storage/invalid', STORAGE_TROUBLE.notStorable],
}

/** Says in one sentence what the database's error means, whatever the browser called it. */
export function toStorageError(error: unknown): StorageError {
  if (error instanceof StorageError) return error
  const name = error instanceof Error || error instanceof DOMException ? error.name : ''
  const known = SENTENCES[name]
  if (known !== undefined) return new StorageError(...known, { cause: error })
  return new StorageError('storage/failed', STORAGE_TROUBLE.failed(name), { cause: error })
}

export function toFailure(error: unknown): Failure {
  const { code, message } = toStorageError(error)
  return fail(code, message)
}
