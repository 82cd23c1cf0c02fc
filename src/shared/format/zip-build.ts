import { deflateSync, strToU8 } from 'fflate'
import { crc32 } from './crc32'

/** 1980-01-01 00:00:00, the first moment ZIP knows: same input, same bytes. */
const DOS_DATE = 0x0021
/** Version 2.0 of the format is what deflate and folders need. */
const VERSION = 20
/** Names are UTF-8. */
const UTF8 = 0x0800
const LOCAL_SIZE = 30
const CENTRAL_SIZE = 46
const END_SIZE = 22
/** What the 32-bit format can address, and count. */
const MAX_BYTES = 0xfffffffe
const MAX_ENTRIES = 0xfffe

interface Described {
  name: Uint8Array
  method: 0 | 8
  crc: number
  packedSize: number
  size: number
  offset: number
}

/**
 * A ZIP (PKWARE APPNOTE 4.3) made one file after the other, as pieces that follow each other: no
 * file has to wait in memory for the last one, and pieces can go into a Blob as they are.
 */
export class ZipBuilder {
  readonly pieces: Uint8Array[] = []
  readonly #entries: Described[] = []
  #at = 0

  /** Adds a file, deflated. @throws RangeError when the 32-bit format is full */
  deflate(path: string, bytes: Uint8Array): void {
    const packed = deflateSync(bytes, { level: 6 })
    const sizes = { packedSize: packed.length, size: bytes.length }
    this.#header(path, { method: 8, crc: crc32(bytes), ...sizes })
    this.#push(packed)
  }

  /** Adds a file as it is. */
  store(path: string, bytes: Uint8Array): void {
    this.storeLater(path, bytes.length, crc32(bytes))
    this.pieces.push(bytes)
  }

  /** Adds the head of a file; the caller puts its bytes behind the last piece. */
  storeLater(path: string, size: number, crc: number): void {
    this.#header(path, { method: 0, crc, packedSize: size, size })
    this.#at += size
  }

  /** Adds the directory; nothing may be added after it. */
  end(): void {
    const start = this.#at
    for (const entry of this.#entries) this.#push(centralHeader(entry))
    const end = new DataView(new ArrayBuffer(END_SIZE))
    end.setUint32(0, 0x06054b50, true)
    end.setUint16(8, this.#entries.length, true)
    end.setUint16(10, this.#entries.length, true)
    end.setUint32(12, this.#at - start, true)
    end.setUint32(16, start, true)
    this.#push(new Uint8Array(end.buffer))
  }

  #header(path: string, facts: Omit<Described, 'name' | 'offset'>): void {
    const entry = { ...facts, name: strToU8(path), offset: this.#at }
    if (this.#at + facts.packedSize > MAX_BYTES || this.#entries.length >= MAX_ENTRIES) {
      throw new RangeError('The file would be larger than 4 GiB or hold more than 65,534 files.')
    }
    this.#entries.push(entry)
    this.#push(localHeader(entry))
  }

  #push(piece: Uint8Array): void {
    this.pieces.push(piece)
    this.#at += piece.length
  }
}

function localHeader(entry: Described): Uint8Array {
  const bytes = new Uint8Array(LOCAL_SIZE + entry.name.length)
  const view = new DataView(bytes.buffer)
  view.setUint32(0, 0x04034b50, true)
  writeCommon(view, 4, entry)
  bytes.set(entry.name, LOCAL_SIZE)
  return bytes
}

function centralHeader(entry: Described): Uint8Array {
  const bytes = new Uint8Array(CENTRAL_SIZE + entry.name.length)
  const view = new DataView(bytes.buffer)
  view.setUint32(0, 0x02014b50, true)
  view.setUint16(4, VERSION, true)
  writeCommon(view, 6, entry)
  view.setUint32(42, entry.offset, true)
  bytes.set(entry.name, CENTRAL_SIZE)
  return bytes
}

/** The fields that both headers have in the same order. */
function writeCommon(view: DataView, at: number, entry: Described): void {
  view.setUint16(at, VERSION, true)
  view.setUint16(at + 2, UTF8, true)
  view.setUint16(at + 4, entry.method, true)
  view.setUint16(at + 8, DOS_DATE, true)
  view.setUint32(at + 10, entry.crc, true)
  view.setUint32(at + 14, entry.packedSize, true)
  view.setUint32(at + 18, entry.size, true)
  view.setUint16(at + 22, entry.name.length, true)
}
