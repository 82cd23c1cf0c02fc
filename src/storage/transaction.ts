import { ok, type Result } from '../shared/model/result'
import type { Connection } from './connection'
import { toFailure, toStorageError } from './failure'
import type { Database, ReadTransaction, StoreNames, WriteTransaction } from './schema'

/**
 * Runs `work` in one durable transaction. Everything is stored by the time it settles, or nothing.
 * `work` must await nothing but requests of its own transaction, or the browser commits early, and
 * must be fit to run again: a transaction that the browser aborted for reasons of its own, as when
 * a phone puts the page away, is tried once more.
 */
export async function write<T>(
  connection: Connection,
  stores: StoreNames[],
  work: (tx: WriteTransaction) => Promise<T>,
): Promise<Result<T>> {
  try {
    await connection.needPen()
    return ok(
      await attempt(connection, stores, work).catch((error: unknown) => {
        if (!isAbortOfPlatform(error)) throw error
        return attempt(connection, stores, work)
      }),
    )
  } catch (error) {
    return toFailure(error)
  }
}

/** @throws whatever ended the transaction */
async function attempt<T>(
  connection: Connection,
  stores: StoreNames[],
  work: (tx: WriteTransaction) => Promise<T>,
): Promise<T> {
  const tx = await begin(connection, (db) =>
    db.transaction(stores, 'readwrite', { durability: 'strict' }),
  )
  try {
    const [value] = await Promise.all([work(tx), tx.done])
    connection.wrote(stores)
    return value
  } catch (error) {
    throw await rootCause(tx, error)
  }
}

/** Nothing was stored, and nothing about the data was wrong. */
function isAbortOfPlatform(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'AbortError'
}

/** Runs `work` in one read-only transaction. @throws StorageError */
export async function read<T>(
  connection: Connection,
  stores: StoreNames[],
  work: (tx: ReadTransaction) => Promise<T>,
): Promise<T> {
  try {
    const tx = await begin(connection, (db) => db.transaction(stores, 'readonly'))
    const [value] = await Promise.all([work(tx), tx.done])
    return value
  } catch (error) {
    throw toStorageError(error)
  }
}

/**
 * Starts requests one after another and waits for all. One that cannot even start, as when its
 * value cannot be cloned, rejects like one that fails later, so that no other is left unwatched.
 */
export async function startAll(starts: readonly (() => Promise<unknown>)[]): Promise<void> {
  await Promise.all(starts.map(async (start) => start()))
}

/** Browsers may cut the connection of a page in the background: then one more try on a new one. */
async function begin<T>(connection: Connection, start: (db: Database) => T): Promise<T> {
  try {
    return start(await connection.get())
  } catch (error) {
    if (!(error instanceof DOMException && error.name === 'InvalidStateError')) throw error
    connection.drop()
    return start(await connection.get())
  }
}

/** What requests report of a transaction that has ended, before and after they were made. */
const ENDED = ['AbortError', 'TransactionInactiveError', 'InvalidStateError']

/** When a transaction dies, its open requests report only that; the transaction knows why. */
async function rootCause(tx: WriteTransaction, error: unknown): Promise<unknown> {
  try {
    tx.abort()
  } catch {
    // It has ended already.
  }
  const end = await tx.done.then(
    () => null,
    (reason: unknown) => reason,
  )
  const onlyAborted = error instanceof DOMException && ENDED.includes(error.name)
  return onlyAborted ? (tx.error ?? end ?? error) : error
}
