import { backupPieces } from '../../../src/shared/backup/backup-zip'
import type { ByteSource } from '../../../src/shared/backup/contents'
import type { BackupItem } from '../../../src/shared/backup/kept-items'
import { packLibrary } from '../../../src/shared/backup/pack-library'
import { joinBytes } from '../../../src/shared/format/join-bytes'
import { sha256Hex } from '../../../src/shared/format/sha256'
import type { FullLibrary } from '../../../src/shared/model/library'
import { sampleLibrary } from '../format/sample-library'

export const MADE_AT = '2026-11-25T16:00:00Z'

/** The sample library under another id and name. */
export function renamed(id: string, name: string): FullLibrary {
  const { library, recordings } = sampleLibrary()
  return {
    library: { ...library, id, name },
    recordings: recordings.map(({ recording, samples }) => ({
      recording: { ...recording, id: `${id}-${recording.id}`, libraryId: id },
      samples,
    })),
  }
}

export const EXAMPLE_ITEMS: BackupItem[] = [
  {
    kind: 'sessions',
    id: 'session-1',
    keptAt: MADE_AT,
    value: { tester: 'A1', done: [true, false], note: null },
  },
  {
    kind: 'models',
    id: 'model-1',
    keptAt: MADE_AT,
    value: { bytes: Uint8Array.of(1, 2, 255), weights: Float32Array.of(0.1, Number.NaN, -0) },
  },
]

/** A backup as bytes, made as the app makes it. */
export async function makeBackup(
  fulls: readonly FullLibrary[],
  items: readonly BackupItem[] = EXAMPLE_ITEMS,
): Promise<Uint8Array> {
  const entries = await Promise.all(
    fulls.map(async (full, index) => {
      const packed = await packLibrary(full, index === 0 ? items : [], async (b) => sha256Hex(b))
      const facts = ({ bytes, crc }: { bytes: Uint8Array; crc: number }) => ({
        content: bytes,
        size: bytes.length,
        crc,
      })
      const takes = full.recordings.filter(({ recording }) => recording.kind === 'take').length
      return {
        library: { id: full.library.id, name: full.library.name },
        takes,
        backgrounds: full.recordings.length - takes,
        sha256: packed.sha256,
        file: facts(packed.library),
        list: facts(packed.list),
        items: packed.items === null ? null : facts(packed.items),
      }
    }),
  )
  return joinBytes(backupPieces(entries, MADE_AT))
}

/** Bytes as a source; `read` counts what was asked for. */
export function sourceOf(bytes: Uint8Array): ByteSource & { asked: number } {
  return {
    size: bytes.length,
    asked: 0,
    async read({ start, end }) {
      this.asked += end - start
      return bytes.slice(start, end)
    },
  }
}
