import type { CallOptions, RecogniserClient } from '../../recogniser/client'
import { type BackupEntry, backupPieces, type PartFacts } from '../../shared/backup/backup-zip'
import { BACKUP_ITEM_KINDS, type BackupItem } from '../../shared/backup/kept-items'
import type { PackedPart } from '../../shared/backup/pack-library'
import type { FullLibrary } from '../../shared/model/library'
import { fail, ok, type Result } from '../../shared/model/result'
import type { Store } from '../../storage/store'

export interface MadeBackup {
  fileName: string
  blob: Blob
  /** What is in it, by library. */
  recordingIds: Map<string, string[]>
}

/**
 * Everything on this phone as one file. One library at a time is in memory; what is packed already
 * waits in Blobs, which browsers put on disk when there is much.
 */
export async function makeBackup(
  store: Store,
  recogniser: RecogniserClient,
  { signal, onProgress }: Required<Pick<CallOptions, 'signal' | 'onProgress'>>,
): Promise<Result<MadeBackup>> {
  const libraries = await store.listLibraries()
  const total = libraries.length
  const entries: BackupEntry<Blob>[] = []
  const recordingIds = new Map<string, string[]>()
  for (const [index, library] of libraries.entries()) {
    const full = await store.loadFull(library.id)
    if (full === null) continue
    const packed = await recogniser.packLibrary(full, await itemsOf(store, library.id), {
      signal,
      onProgress: (steps) =>
        onProgress({
          done: index + steps.done / Math.max(1, steps.total),
          total,
          what: `Writing ${library.name}`,
        }),
    })
    if (!packed.ok) return packed
    const { sha256, library: file, list, items } = packed.value
    entries.push({
      library: { id: library.id, name: library.name },
      ...countsOf(full),
      sha256,
      file: inBlob(file),
      list: inBlob(list),
      items: items === null ? null : inBlob(items),
    })
    recordingIds.set(
      library.id,
      full.recordings.map(({ recording }) => recording.id),
    )
  }
  if (entries.length === 0) return fail('backup/nothing', 'There is no library here to back up.')
  const madeAt = new Date().toISOString()
  const pieces = backupPieces(entries, madeAt) as BlobPart[]
  const fileName = `movewright-backup-${madeAt.slice(0, 10)}.zip`
  return ok({ fileName, blob: new Blob(pieces, { type: 'application/zip' }), recordingIds })
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
