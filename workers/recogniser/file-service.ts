import type { ByteSource } from '../../src/shared/backup/contents'
import { sha256Hex } from '../../src/shared/format/sha256'
import { fail, ok, type Result } from '../../src/shared/model/result'
import type { RecogniserService, StoredFile } from '../../src/shared/protocol/recogniser'

/** Loaded with the first file: most visits open none. */
const loadFormat = () => import('../../src/shared/format/library-file')
const loadRead = () => import('../../src/shared/backup/read-backup')

type FileService = Pick<
  RecogniserService,
  | 'readIncoming'
  | 'contentIds'
  | 'writeLibrary'
  | 'readLibrary'
  | 'packLibrary'
  | 'readBackup'
  | 'readBackupLibrary'
>

/** Library files and backups here, so that thousands of rows of CSV never hold up the screen. */
export function createFileService(): FileService {
  return {
    writeLibrary: async (full, onProgress) => {
      const { writeLibraryFile } = await loadFormat()
      const { withStandIns } = await import('../../src/shared/backup/stand-in-gestures')
      return soundly(async () => writeLibraryFile(withStandIns(full), onProgress))
    },
    readLibrary: async (bytes, onProgress) =>
      (await loadFormat()).readLibraryFile(bytes, onProgress),
    readIncoming: async (name, bytes) => {
      const { readIncoming } = await import('../../src/shared/collect/read-incoming')
      return readIncoming(name, bytes)
    },
    contentIds: async (blocks) => {
      const { contentId } = await import('../../src/shared/collect/content-id')
      return ok(blocks.map(contentId))
    },
    packLibrary: async (full, items, onProgress) => {
      const { packLibrary } = await import('../../src/shared/backup/pack-library')
      return soundly(() => packLibrary(full, items, digest, onProgress))
    },
    readBackup: async (file, onProgress) =>
      (await loadRead()).readContents(sourceOf(file), onProgress),
    readBackupLibrary: async (file, place, onProgress) =>
      (await loadRead()).readLibraryAt(sourceOf(file), place, onProgress),
  }
}

/** A library that breaks its own rules, such as one damaged in storage, is a failure and no bug. */
async function soundly<T>(work: () => Promise<T>): Promise<Result<T>> {
  try {
    return ok(await work())
  } catch (error) {
    if (error instanceof RangeError) return fail('library/unsound', error.message)
    throw error
  }
}

function sourceOf(file: StoredFile): ByteSource {
  return {
    size: file.size,
    read: async ({ start, end }) => new Uint8Array(await file.slice(start, end).arrayBuffer()),
  }
}

/** The browser's own where there is one: it takes a tenth of the time. */
async function digest(bytes: Uint8Array): Promise<string> {
  if (globalThis.crypto?.subtle === undefined) return sha256Hex(bytes)
  const hash = await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>)
  return [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
