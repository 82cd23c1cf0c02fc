import { type Marks, markOf } from '../shared/collect/marks'
import { isWithdrawals } from '../shared/format/collect-schema'
import type { Connection } from './connection'
import type { StoredLibrary, WriteTransaction } from './schema'
import { read } from './transaction'

/** Digests of withdrawals whose library was removed for good. */
export async function readMarks(connection: Connection): Promise<Marks> {
  const stored = await read(connection, ['marks'], (tx) => tx.objectStore('marks').getAll())
  return new Map(stored.map(({ id, why }) => [id, why]))
}

/** Keeps a mark of every withdrawal of a library that goes, within the transaction in which it goes. */
export async function markWithdrawals(
  tx: WriteTransaction,
  { id, library }: StoredLibrary,
): Promise<void> {
  // Of a damaged library whatever can be read still counts.
  const withdrawals: unknown = library?.withdrawals
  if (!isWithdrawals(withdrawals)) return
  const marks = tx.objectStore('marks')
  await Promise.all(withdrawals.map((one) => marks.put({ id: markOf(id, one), why: one.why })))
}
