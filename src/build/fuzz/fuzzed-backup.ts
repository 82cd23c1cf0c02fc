import { isDeepStrictEqual } from 'node:util'
import { backupPieces } from '../../shared/backup/backup-zip'
import type { ByteSource } from '../../shared/backup/contents'
import { packLibrary } from '../../shared/backup/pack-library'
import { readContents, readLibraryAt } from '../../shared/backup/read-backup'
import { joinBytes } from '../../shared/format/join-bytes'
import { sha256Hex } from '../../shared/format/sha256'
import type { FullLibrary } from '../../shared/model/library'
import { exampleLibrary } from './examples'
import { mutateBytes } from './mutate'
import type { FuzzSubject, Verdict } from './round-trip'

/** A backup that was damaged: what comes back of it is what went in, or it does not come back. */
export async function fuzzedBackup(): Promise<FuzzSubject> {
  const full = exampleLibrary()
  const bytes = await backupOf(full)
  return {
    name: 'backup',
    share: 0.05,
    alter: (random) => mutateBytes(bytes, random),
    judge: (altered) => judge(altered, full),
  }
}

async function backupOf(full: FullLibrary): Promise<Uint8Array> {
  const packed = await packLibrary(full, [], async (bytes) => sha256Hex(bytes))
  const part = ({ bytes, crc }: { bytes: Uint8Array; crc: number }) => {
    return { content: bytes, size: bytes.length, crc }
  }
  const entry = {
    library: full.library,
    takes: 2,
    backgrounds: 1,
    sha256: packed.sha256,
    file: part(packed.library),
    list: part(packed.list),
    items: null,
  }
  return joinBytes(backupPieces([entry], full.library.createdAt))
}

async function judge(bytes: Uint8Array, full: FullLibrary): Promise<Verdict> {
  const source: ByteSource = {
    size: bytes.length,
    read: async ({ start, end }) => bytes.subarray(start, end),
  }
  const contents = await readContents(source)
  if (!contents.ok) return 'refused'
  for (const { place } of contents.value.libraries) {
    const read = await readLibraryAt(source, place)
    if (!read.ok) continue
    for (const { recording, samples } of read.value.full.recordings) {
      // Where all lists are lost, ids are given anew and facts come from paths.
      const byId = full.recordings.find((one) => one.recording.id === recording.id)
      const same =
        byId === undefined
          ? full.recordings.some((one) => isDeepStrictEqual(one.samples, samples))
          : isDeepStrictEqual(byId, { recording, samples })
      if (!same) return { wrong: `recording ${recording.id} came back different` }
    }
  }
  return 'same'
}
