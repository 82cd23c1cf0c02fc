import { strFromU8 } from 'fflate'
import type { DirectoryEntry } from '../format/zip-directory'
import { isSafePath, unpack } from '../format/zip-read'

const LOCAL = 0x04034b50
const CENTRAL = 0x02014b50
const DESCRIPTOR = 0x08074b50
const LOCAL_SIZE = 30
const CENTRAL_SIZE = 46
/** Sizes stand behind the data and not before them. */
const SIZES_BEHIND = 8
/** More are not looked at: damage does not make files, so it is no Movewright file. */
const MAX_CLAIMS = 100_000

/** What one header says about a file; each file has two headers, of which one may be damaged. */
interface Claim extends DirectoryEntry {
  /** From the directory at the end, with the place it gives; its sizes count for any header. */
  central: boolean
}

/**
 * What is whole in a damaged ZIP. Every header in it is looked for by its signature, the one before
 * a file and the one in the directory at the end, wherever they are; a file is whole when the data
 * have the length and CRC-32 that either of them says.
 */
export class WholeEntries {
  readonly #bytes: Uint8Array
  readonly #claims = new Map<string, Claim[]>()
  readonly #maxEntryBytes: number

  constructor(bytes: Uint8Array, maxEntryBytes: number) {
    this.#bytes = bytes
    this.#maxEntryBytes = maxEntryBytes
    for (const claim of claimsIn(bytes)) {
      const same = this.#claims.get(claim.path)
      if (same === undefined) this.#claims.set(claim.path, [claim])
      else same.push(claim)
    }
  }

  /** Every path that some header names, in the order in which they are met. */
  paths(): string[] {
    return [...this.#claims.keys()]
  }

  /** The file's bytes, or null when they are not whole; `start` tells data under two names. */
  read(path: string): { bytes: Uint8Array; start: number } | null {
    const claims = this.#claims.get(path) ?? []
    const starts = new Set(claims.map(({ dataStart }) => dataStart))
    for (const start of starts) {
      for (const claim of claims) {
        const found = this.#unpack({ ...claim, dataStart: start })
        if (found !== null) return { bytes: found, start }
      }
    }
    return null
  }

  #unpack(entry: DirectoryEntry): Uint8Array | null {
    if (entry.size > this.#maxEntryBytes) return null
    if (entry.dataStart + entry.packedSize > this.#bytes.length) return null
    const unpacked = unpack(this.#bytes, entry)
    return unpacked.ok ? unpacked.value : null
  }
}

function* claimsIn(bytes: Uint8Array): Generator<Claim> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let count = 0
  for (const at of signatures(bytes)) {
    const claim = claimAt(view, bytes, at)
    if (claim === null) continue
    yield claim
    count += 1
    if (count >= MAX_CLAIMS) return
  }
}

/** Places where a ZIP signature, 'PK' and two small numbers, may stand. */
export function* signatures(bytes: Uint8Array): Generator<number> {
  for (let at = bytes.indexOf(0x50); at >= 0; at = bytes.indexOf(0x50, at + 1)) {
    if (bytes[at + 1] === 0x4b && (bytes[at + 2] ?? 255) < 8) yield at
  }
}

function claimAt(view: DataView, bytes: Uint8Array, at: number): Claim | null {
  if (at + LOCAL_SIZE > bytes.length) return null
  const signature = view.getUint32(at, true)
  if (signature === LOCAL) return localClaim(view, bytes, at)
  if (signature === CENTRAL && at + CENTRAL_SIZE <= bytes.length) {
    return centralClaim(view, bytes, at)
  }
  return null
}

/** A header before a file; also used to find where the parts of a backup begin. */
export function localClaim(view: DataView, bytes: Uint8Array, at: number): Claim | null {
  const nameLength = view.getUint16(at + 26, true)
  const path = pathAt(bytes, at + LOCAL_SIZE, nameLength)
  if (path === null) return null
  const method = view.getUint16(at + 8, true)
  const claim: Claim = {
    path,
    deflated: method !== 0,
    crc: view.getUint32(at + 14, true),
    packedSize: view.getUint32(at + 18, true),
    size: view.getUint32(at + 22, true),
    dataStart: at + LOCAL_SIZE + nameLength + view.getUint16(at + 28, true),
    central: false,
  }
  const isBehind = (view.getUint16(at + 6, true) & SIZES_BEHIND) !== 0
  return isBehind ? { ...claim, ...descriptorBehind(view, bytes, claim.dataStart) } : claim
}

function centralClaim(view: DataView, bytes: Uint8Array, at: number): Claim | null {
  const nameLength = view.getUint16(at + 28, true)
  const path = pathAt(bytes, at + CENTRAL_SIZE, nameLength)
  if (path === null) return null
  const local = view.getUint32(at + 42, true)
  const readable = local + LOCAL_SIZE <= bytes.length && view.getUint32(local, true) === LOCAL
  const extra =
    readable && view.getUint16(local + 26, true) === nameLength
      ? view.getUint16(local + 28, true)
      : 0
  return {
    path,
    deflated: view.getUint16(at + 10, true) !== 0,
    crc: view.getUint32(at + 16, true),
    packedSize: view.getUint32(at + 20, true),
    size: view.getUint32(at + 24, true),
    dataStart: local + LOCAL_SIZE + nameLength + extra,
    central: true,
  }
}

function pathAt(bytes: Uint8Array, start: number, length: number): string | null {
  if (length === 0 || start + length > bytes.length) return null
  const path = strFromU8(bytes.subarray(start, start + length))
  return isSafePath(path) ? path : null
}

/** CRC and sizes that follow the data, found by the size that fits its place (APPNOTE 4.3.9). */
function descriptorBehind(view: DataView, bytes: Uint8Array, start: number) {
  const rest = bytes.subarray(start)
  for (const offset of signatures(rest)) {
    const at = start + offset
    if (at + 16 > bytes.length || view.getUint32(at, true) !== DESCRIPTOR) continue
    if (view.getUint32(at + 8, true) !== offset) continue
    return {
      crc: view.getUint32(at + 4, true),
      packedSize: offset,
      size: view.getUint32(at + 12, true),
    }
  }
  return {}
}
