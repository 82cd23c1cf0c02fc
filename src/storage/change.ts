import type { Result } from '../shared/model/result'
import type { Connection } from './connection'
import { factsWithin, type LibraryFacts } from './contents'
import { addWithSamples, findDamage, ofSamples } from './recordings'
import { noLibrary, requireLibrary, requireRecording } from './required'
import type { WriteTransaction } from './schema'
import type { LibraryChange } from './store'
import { write } from './transaction'
import type { Unreadable } from './unreadable'

/** Changes a library and its recordings in one transaction: all of it is stored, or nothing. */
export async function changeLibrary(
  connection: Connection,
  change: LibraryChange,
  now: string,
): Promise<Result<null>> {
  const damage = findDamage(change.add)
  if (damage !== null) return damage
  return write(connection, ['libraries', 'recordings', 'chunks'], async (tx) => {
    await carryOut(tx, change, now)
    return null
  })
}

/**
 * The same for a change that follows from what is stored: read, planned and written in one transaction,
 * so that no edit comes between and is written over.
 * @param plan may be asked twice; its failure changes nothing and is given back
 * @returns what was changed; failure 'storage/no-library' also where the library is deleted
 */
export async function planChange(
  connection: Connection,
  unreadable: Unreadable,
  libraryId: string,
  plan: (facts: LibraryFacts) => Result<LibraryChange>,
  now: string,
): Promise<Result<LibraryChange>> {
  const done = await write(connection, ['libraries', 'recordings', 'chunks'], async (tx) => {
    const facts = await factsWithin(tx, unreadable, libraryId)
    if (facts === null) throw noLibrary()
    const planned = plan(facts)
    const damage = planned.ok ? findDamage(planned.value.add) : null
    if (planned.ok && damage === null) await carryOut(tx, planned.value, now)
    return damage ?? planned
  })
  return done.ok ? done.value : done
}

async function carryOut(
  tx: WriteTransaction,
  { library, add, update, remove, restore }: LibraryChange,
  now: string,
): Promise<void> {
  const stored = await requireLibrary(tx, library.id)
  await Promise.all([
    tx.objectStore('libraries').put({ ...stored, library }),
    addWithSamples(tx, add),
    ...update.map(async (recording) => {
      const kept = ofSamples(await requireRecording(tx, recording.id))
      await tx.objectStore('recordings').put({ ...recording, libraryId: library.id, ...kept })
    }),
    ...remove.map((id) => mark(tx, id, now)),
    ...restore.map((id) => mark(tx, id, null)),
  ])
}

async function mark(tx: WriteTransaction, id: string, deletedAt: string | null): Promise<void> {
  const recording = await requireRecording(tx, id)
  await tx.objectStore('recordings').put({ ...recording, deletedAt })
}
