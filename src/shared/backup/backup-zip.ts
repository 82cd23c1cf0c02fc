import { crc32 } from '../format/crc32'
import { fileWord } from '../format/file-names'
import { ZipBuilder } from '../format/zip-build'
import type { Library } from '../model/library'
import { BACKUP_FORMAT, BACKUP_FORMAT_VERSION, BACKUP_PATHS, manifestBytes } from './manifest'

/** Sizes and checksums of one library's parts; the parts themselves may lie on disk. */
export interface PartFacts<T> {
  content: T
  size: number
  crc: number
}

export interface BackupEntry<T> {
  library: Pick<Library, 'id' | 'name'>
  takes: number
  backgrounds: number
  sha256: string
  file: PartFacts<T>
  list: PartFacts<T>
  items: PartFacts<T> | null
}

/**
 * A backup as pieces one after the other: manifest, library files, their lists once more at the
 * end, so that no damaged stretch takes both, and items. Contents are passed through untouched, so
 * they may be Blobs that were never read back.
 */
export function backupPieces<T>(
  entries: readonly BackupEntry<T>[],
  madeAt: string,
): (Uint8Array | T)[] {
  const named = entries.map((entry, index) => ({
    ...entry,
    paths: {
      file: BACKUP_PATHS.library(index + 1, fileWord(entry.library.name, 'library')),
      list: BACKUP_PATHS.list(index + 1),
      items: entry.items === null ? null : BACKUP_PATHS.items(index + 1),
    },
  }))
  const zip = new ZipBuilder()
  const pieces: (Uint8Array | T)[] = []
  const takePieces = () => pieces.push(...zip.pieces.splice(0))
  const add = (path: string, { content, size, crc }: PartFacts<T>) => {
    zip.storeLater(path, size, crc)
    takePieces()
    pieces.push(content)
  }
  const manifest = manifestBytes({
    format: BACKUP_FORMAT,
    formatVersion: BACKUP_FORMAT_VERSION,
    madeAt,
    libraries: named.map(({ library, takes, backgrounds, sha256, file, paths }) => ({
      ...library,
      ...paths,
      bytes: file.size,
      sha256,
      takes,
      backgrounds,
    })),
  })
  zip.storeLater(BACKUP_PATHS.manifest, manifest.length, crc32(manifest))
  takePieces()
  pieces.push(manifest)
  for (const { paths, file } of named) add(paths.file, file)
  for (const { paths, list } of named) add(paths.list, list)
  for (const { paths, items } of named) {
    if (items !== null && paths.items !== null) add(paths.items, items)
  }
  zip.end()
  takePieces()
  return pieces
}
