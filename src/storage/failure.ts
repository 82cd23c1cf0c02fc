import { type Failure, fail } from '../shared/model/result'

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
  QuotaExceededError: [
    'storage/full',
    'The storage of this browser is full, so nothing was saved: free space on the device, or export a library and remove it.',
  ],
  ConstraintError: [
    'storage/exists',
    'A library or recording with the same identity is already stored, so nothing was added: remove the stored one first.',
  ],
  DataCloneError: [
    'storage/invalid',
    'The data hold something that cannot be stored, so nothing was saved: this is a fault of the app, please report it.',
  ],
}

/** Says in one sentence what the database's error means, whatever the browser called it. */
export function toStorageError(error: unknown): StorageError {
  if (error instanceof StorageError) return error
  const name = error instanceof Error || error instanceof DOMException ? error.name : ''
  const known = SENTENCES[name]
  if (known !== undefined) return new StorageError(...known, { cause: error })
  return new StorageError(
    'storage/failed',
    `The browser's database failed (${name || 'unknown error'}): try again, and reload the page if it stays so.`,
    { cause: error },
  )
}

export function toFailure(error: unknown): Failure {
  const { code, message } = toStorageError(error)
  return fail(code, message)
}
