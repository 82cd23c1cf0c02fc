import type { Result } from '../shared/model/result'
import type { Connection } from './connection'
import { addWithSamples, findDamage } from './recordings'
import { requireLibrary, requireRecording } from './required'
import type { WriteTransaction } from './schema'
import type { LibraryChange } from './store'
import { write } from './transaction'

/** Changes a library and its recordings in one transaction: all of it is stored, or nothing. */
export async function changeLibrary(
  connection: Connection,
  { library, add, update, remove, restore }: LibraryChange,
  now: string,
): Promise<Result<null>> {
  const damage = findDamage(add)
  if (damage !== null) return damage
  return write(connection, ['libraries', 'recordings', 'chunks'], async (tx) => {
    const stored = await requireLibrary(tx, library.id)
    await Promise.all([
      tx.objectStore('libraries').put({ ...stored, library }),
      addWithSamples(tx, add),
      ...update.map(async (recording) => {
        const { sampleCount, durationMs, deletedAt } = await requireRecording(tx, recording.id)
        const facts = { ...recording, libraryId: library.id, sampleCount, durationMs, deletedAt }
        await tx.objectStore('recordings').put(facts)
      }),
      ...remove.map((id) => mark(tx, id, now)),
      ...restore.map((id) => mark(tx, id, null)),
    ])
    return null
  })
}

async function mark(tx: WriteTransaction, id: string, deletedAt: string | null): Promise<void> {
  const recording = await requireRecording(tx, id)
  await tx.objectStore('recordings').put({ ...recording, deletedAt })
}
