import { strFromU8 } from 'fflate'
import { fail, ok, type Result } from '../model/result'
import { ZIP_TROUBLE } from '../words/en/zip-trouble'

/**
 * The central directory of a ZIP (PKWARE APPNOTE 4.3.12, 4.3.16). Read here and not by a library,
 * since what is claimed must be checked before a byte is unpacked.
 */
export interface DirectoryEntry {
  path: string
  packedSize: number
  size: number
  crc: number
  deflated: boolean
  /** Where the packed bytes start. */
  dataStart: number
}

const END_SIGNATURE = 0x06054b50
const CENTRAL_SIGNATURE = 0x02014b50
const LOCAL_SIGNATURE = 0x04034b50
const END_SIZE = 22
const CENTRAL_SIZE = 46
const LOCAL_SIZE = 30
const MAX_COMMENT = 0xffff
const ENCRYPTED = 1

const damaged = (what: string) => fail('zip/damaged', ZIP_TROUBLE.damaged(what))

/** Entries in the order of the directory, folders left out. Nothing is unpacked. */
export function readDirectory(bytes: Uint8Array): Result<DirectoryEntry[]> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const end = findEnd(view)
  if (end === null) {
    return fail('zip/not-a-zip', ZIP_TROUBLE.noZip)
  }
  const count = view.getUint16(end + 10, true)
  const start = view.getUint32(end + 16, true)
  if (count === 0xffff || start === 0xffffffff) {
    return fail('zip/too-large', ZIP_TROUBLE.zip64)
  }
  const entries: DirectoryEntry[] = []
  let at = start
  for (let index = 0; index < count; index++) {
    if (at + CENTRAL_SIZE > end || view.getUint32(at, true) !== CENTRAL_SIGNATURE) {
      return damaged(ZIP_TROUBLE.directoryEnds(index, count))
    }
    const entry = readEntry(view, bytes, at)
    if (!entry.ok) return entry
    if (!entry.value.path.endsWith('/')) entries.push(entry.value)
    at += CENTRAL_SIZE + variableLengths(view, at)
  }
  return noOverlap(entries)
}

function findEnd(view: DataView): number | null {
  const last = view.byteLength - END_SIZE
  for (let at = last; at >= 0 && at >= last - MAX_COMMENT; at--) {
    const commentFits = () => at + END_SIZE + view.getUint16(at + 20, true) === view.byteLength
    if (view.getUint32(at, true) === END_SIGNATURE && commentFits()) return at
  }
  return null
}

function variableLengths(view: DataView, at: number): number {
  return (
    view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true)
  )
}

function readEntry(view: DataView, bytes: Uint8Array, at: number): Result<DirectoryEntry> {
  const nameLength = view.getUint16(at + 28, true)
  const name = bytes.subarray(at + CENTRAL_SIZE, at + CENTRAL_SIZE + nameLength)
  const path = strFromU8(name)
  const method = view.getUint16(at + 10, true)
  if ((view.getUint16(at + 8, true) & ENCRYPTED) !== 0) {
    return fail('zip/unsupported', ZIP_TROUBLE.encrypted(path))
  }
  if (method !== 0 && method !== 8) {
    return fail('zip/unsupported', ZIP_TROUBLE.method(path, method))
  }
  const local = view.getUint32(at + 42, true)
  if (local + LOCAL_SIZE > bytes.length || view.getUint32(local, true) !== LOCAL_SIGNATURE) {
    return damaged(ZIP_TROUBLE.elsewhere(path))
  }
  const localName = view.getUint16(local + 26, true)
  const localPath = strFromU8(bytes.subarray(local + LOCAL_SIZE, local + LOCAL_SIZE + localName))
  if (localPath !== path) return damaged(ZIP_TROUBLE.otherName(path))
  const entry: DirectoryEntry = {
    path,
    packedSize: view.getUint32(at + 20, true),
    size: view.getUint32(at + 24, true),
    crc: view.getUint32(at + 16, true),
    deflated: method === 8,
    dataStart: local + LOCAL_SIZE + localName + view.getUint16(local + 28, true),
  }
  if (entry.dataStart + entry.packedSize > bytes.length) return damaged(ZIP_TROUBLE.cutShort(path))
  return ok(entry)
}

/** Entries that share packed bytes make a small file claim a huge content. */
function noOverlap(entries: DirectoryEntry[]): Result<DirectoryEntry[]> {
  const sorted = [...entries].sort((a, b) => a.dataStart - b.dataStart)
  for (const [index, entry] of sorted.entries()) {
    const before = sorted[index - 1]
    if (before && before.dataStart + before.packedSize > entry.dataStart) {
      return damaged(ZIP_TROUBLE.overlap(before.path, entry.path))
    }
  }
  return ok(entries)
}
