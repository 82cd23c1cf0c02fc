import { fail, ok, type Result } from '../model/result'
import { ZIP_TROUBLE } from '../words/en/zip-trouble'
import { crc32 } from './crc32'
import { inflateExactly } from './inflate'
import { type DirectoryEntry, readDirectory } from './zip-directory'

export interface ZipLimits {
  /** Packed bytes of the whole file. */
  maxPackedBytes: number
  maxEntries: number
  /** Unpacked bytes of one entry, and of all together. */
  maxEntryBytes: number
  maxTotalBytes: number
}

export interface ZipEntry {
  path: string
  /** Unpacks and checks length and CRC-32; no more memory than the entry claims is used. */
  read(): Result<Uint8Array>
}

/**
 * Opens a ZIP that somebody else made: paths must stay inside the folder, appear once, and claim
 * sizes within the limits. Folder entries are passed over.
 * @returns failures 'zip/not-a-zip', 'zip/damaged', 'zip/unsupported', 'zip/too-large',
 *   'zip/unsafe-path', 'zip/duplicate'
 */
export function openZip(bytes: Uint8Array, limits: ZipLimits): Result<Map<string, ZipEntry>> {
  if (bytes.length > limits.maxPackedBytes) {
    return tooLarge(ZIP_TROUBLE.theZip, bytes.length, limits.maxPackedBytes)
  }
  const directory = readDirectory(bytes)
  if (!directory.ok) return directory
  if (directory.value.length > limits.maxEntries) {
    return fail(
      'zip/too-large',
      ZIP_TROUBLE.tooManyFiles(directory.value.length, limits.maxEntries),
    )
  }
  const entries = new Map<string, ZipEntry>()
  let total = 0
  for (const entry of directory.value) {
    if (!isSafePath(entry.path)) {
      return fail('zip/unsafe-path', ZIP_TROUBLE.outside(entry.path))
    }
    if (entries.has(entry.path)) {
      return fail('zip/duplicate', ZIP_TROUBLE.twice(entry.path))
    }
    if (entry.size > limits.maxEntryBytes) {
      return tooLarge(`"${entry.path}"`, entry.size, limits.maxEntryBytes)
    }
    total += entry.size
    entries.set(entry.path, { path: entry.path, read: () => unpack(bytes, entry) })
  }
  if (total > limits.maxTotalBytes)
    return tooLarge(ZIP_TROUBLE.itsContent, total, limits.maxTotalBytes)
  return ok(entries)
}

/** Relative, '/' between parts, no part empty, '.' or '..', no drive, backslash or control code. */
export function isSafePath(path: string): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control codes are what is refused
  if (path.length === 0 || path.length > 400 || /[\\:\u0000-\u001f\u007f]/.test(path)) return false
  return path.split('/').every((part) => part !== '' && part !== '.' && part !== '..')
}

function tooLarge(what: string, size: number, limit: number) {
  return fail('zip/too-large', ZIP_TROUBLE.tooLarge({ what, bytes: size, most: limit }))
}

/** The content of one entry, with length and CRC-32 checked. */
export function unpack(bytes: Uint8Array, entry: DirectoryEntry): Result<Uint8Array> {
  const packed = bytes.subarray(entry.dataStart, entry.dataStart + entry.packedSize)
  const content = entry.deflated ? inflateExactly(packed, entry.size) : packed
  if (content === null || content.length !== entry.size || crc32(content) !== entry.crc) {
    return fail('zip/damaged', ZIP_TROUBLE.entryDamaged(entry.path))
  }
  return ok(content)
}
