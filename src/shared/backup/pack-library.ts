import { crc32 } from '../format/crc32'
import { libraryJson, writeLibraryFile } from '../format/library-file'
import type { FullLibrary } from '../model/library'
import type { OnProgress } from '../protocol/recogniser'
import { type BackupItem, itemsToBytes } from './kept-items'
import { withStandIns } from './stand-in-gestures'

/** A part of a backup with what its headers say about it. */
export interface PackedPart {
  bytes: Uint8Array
  crc: number
}

/** What a backup holds of one library. */
export interface PackedLibrary {
  library: PackedPart
  /** Of the library file, in lower-case hex. */
  sha256: string
  list: PackedPart
  items: PackedPart | null
}

/**
 * A library as a backup holds it; takes whose gesture is missing are under a stand-in.
 * @param digest SHA-256 in lower-case hex
 * @throws RangeError as `writeLibraryFile`
 */
export async function packLibrary(
  full: FullLibrary,
  items: readonly BackupItem[],
  digest: (bytes: Uint8Array) => Promise<string>,
  onProgress?: OnProgress,
): Promise<PackedLibrary> {
  const whole = withStandIns(full)
  const file = writeLibraryFile(whole, onProgress)
  return {
    library: part(file),
    sha256: await digest(file),
    list: part(libraryJson(whole).json),
    items: items.length === 0 ? null : part(itemsToBytes(items)),
  }
}

function part(bytes: Uint8Array): PackedPart {
  return { bytes, crc: crc32(bytes) }
}
