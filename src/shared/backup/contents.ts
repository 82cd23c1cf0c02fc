import type { Library, Recording } from '../model/library'
import type { LostRecording, Salvaged } from './salvage-library'

/** Bytes of a file from `start` up to `end`. */
export interface Stretch {
  start: number
  end: number
}

/** A stretch that is only believed when its CRC-32 is right. */
export interface CheckedStretch extends Stretch {
  crc: number
}

/** Where the parts of one library lie in a backup. */
export interface LibraryPlace {
  /** As the manifest gives it; null when only the library file itself is found. */
  name: string | null
  /** Its place in the manifest, from 1; null when only the library file itself is found. */
  number: number | null
  library: Stretch
  list: CheckedStretch | null
  items: CheckedStretch | null
}

/** A library in a backup, without its samples. */
export interface BackupLibrary {
  place: LibraryPlace
  library: Library
  recordings: Recording[]
  lost: LostRecording[]
  from: Salvaged['from']
  /** Sessions and kept models. */
  itemCount: number
}

/** What a file holds that can be restored. */
export interface BackupContents {
  /** False for a library file by itself. */
  isBackup: boolean
  /** RFC 3339; null for a library file by itself, and when the manifest is damaged. */
  madeAt: string | null
  libraries: BackupLibrary[]
  /** Libraries named in the manifest of which nothing is whole. */
  gone: { name: string; takes: number }[]
}

/** A file as it can be read, wherever it lies: no more of it is in memory than is asked for. */
export interface ByteSource {
  size: number
  read(stretch: Stretch): Promise<Uint8Array>
}
