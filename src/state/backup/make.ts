import type { CallOptions, RecogniserClient } from '../../recogniser/client'
import { type BackupEntry, backupPieces, type PartFacts } from '../../shared/backup/backup-zip'
import { BACKUP_ITEM_KINDS, type BackupItem } from '../../shared/backup/kept-items'
import type { PackedPart } from '../../shared/backup/pack-library'
import type { FullLibrary } from '../../shared/model/library'
import { fail, ok, type Result } from '../../shared/model/result'
import { type LeftOut, nothingSentence } from '../../shared/words/en/backup-words'
import { PROGRESS } from '../../shared/words/en/progress'
import type { Store } from '../../storage/store'

export interface MadeBackup {
  fileName: string
  blob: Blob
  /** What is in it, by library. */
  recordingIds: Map<string, string[]>
  leftOut: LeftOut[]
}

type Steer = Required<Pick<CallOptions, 'signal' | 'onProgress'>>

/**
 * Everything on this phone as one file. One library at a time is in memory; what is packed already
 * waits in Blobs, which browsers put on disk when there is much. A library that cannot be written is
 * left out and named: the others must not be lost for it.
 */
export async function makeBackup(
  store: Store,
  recogniser: RecogniserClient,
  { signal, onProgress }: Steer,
): Promise<Result<MadeBackup>> {
  const libraries = await store.listLibraries()
  const total = libraries.length
  const entries: BackupEntry<Blob>[] = []
  const recordingIds = new Map<string, string[]>()
  const leftOut: LeftOut[] = []
  for (const [index, { id, name }] of libraries.entries()) {
    const full = await store.loadFull(id)
    if (full === null) continue
    const packed = await packedEntry(full, await itemsOf(store, id), recogniser, {
      signal,
      onProgress: (steps) =>
        onProgress({
          done: index + steps.done / Math.max(1, steps.total),
          total,
          what: PROGRESS.writingLibrary(name),
        }),
    })
    if (packed.ok) {
      entries.push(packed.value)
      recordingIds.set(
        id,
        full.recordings.map(({ recording }) => recording.id),
      )
    } else if (packed.code === 'library/unsound') leftOut.push({ name, why: packed.message })
    else return packed
  }
  if (entries.length === 0) return fail('backup/nothing', nothingSentence(leftOut))
  const madeAt = new Date().toISOString()
  const pieces = backupPieces(entries, madeAt) as BlobPart[]
  const fileName = `movewright-backup-${madeAt.slice(0, 10)}.zip`
  const blob = new Blob(pieces, { type: 'application/zip' })
  return ok({ fileName, blob, recordingIds, leftOut })
}

/** One library, packed; its parts wait in Blobs. */
async function packedEntry(
  full: FullLibrary,
  items: BackupItem[],
  recogniser: RecogniserClient,
  steer: Steer,
): Promise<Result<BackupEntry<Blob>>> {
  const packed = await recogniser.packLibrary(full, items, steer)
  if (!packed.ok) return packed
  const { id, name } = full.library
  return ok({
    library: { id, name },
    ...countsOf(full),
    sha256: packed.value.sha256,
    file: inBlob(packed.value.library),
    list: inBlob(packed.value.list),
    items: packed.value.items === null ? null : inBlob(packed.value.items),
  })
}

async function itemsOf(store: Store, libraryId: string): Promise<BackupItem[]> {
  const kinds = await Promise.all(
    BACKUP_ITEM_KINDS.map(async (kind) => ({
      kind,
      items: await store.listItems(kind, libraryId),
    })),
  )
  return kinds.flatMap(({ kind, items }) =>
    items.map(({ id, keptAt, value }) => ({ kind, id, keptAt, value })),
  )
}

function countsOf({ recordings }: FullLibrary) {
  const takes = recordings.filter(({ recording }) => recording.kind === 'take').length
  return { takes, backgrounds: recordings.length - takes }
}

function inBlob({ bytes, crc }: PackedPart): PartFacts<Blob> {
  return { content: new Blob([bytes as Uint8Array<ArrayBuffer>]), size: bytes.length, crc }
}
