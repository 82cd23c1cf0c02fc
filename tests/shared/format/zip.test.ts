import { strFromU8, strToU8, zipSync } from 'fflate'
import { describe, expect, test } from 'vitest'
import { crc32 } from '../../../src/shared/format/crc32'
import { isSafePath, openZip, type ZipLimits } from '../../../src/shared/format/zip-read'
import { writeZip } from '../../../src/shared/format/zip-write'

const LIMITS: ZipLimits = {
  maxPackedBytes: 1e6,
  maxEntries: 10,
  maxEntryBytes: 1e6,
  maxTotalBytes: 2e6,
}

const hello = strToU8('hello '.repeat(50))

function codeOf(bytes: Uint8Array): string {
  const zip = openZip(bytes, LIMITS)
  if (!zip.ok) return zip.code
  for (const entry of zip.value.values()) {
    const content = entry.read()
    if (!content.ok) return content.code
  }
  return 'read'
}

/** Overwrites the 32-bit field at `offset` of the first central directory record. */
function withCentralField(bytes: Uint8Array, offset: number, value: number): Uint8Array {
  const copy = bytes.slice()
  const view = new DataView(copy.buffer)
  const start = view.getUint32(copy.length - 6, true)
  view.setUint32(start + offset, value, true)
  return copy
}

test('crc32 gives the published check values (CRC-32/ISO-HDLC)', () => {
  expect(crc32(strToU8('123456789'))).toBe(0xcbf43926)
  expect(crc32(strToU8('The quick brown fox jumps over the lazy dog'))).toBe(0x414fa339)
  expect(crc32(new Uint8Array())).toBe(0)
})

describe('writeZip', () => {
  test('gives the same bytes each time, dated 1980-01-01 (DOS time 0x00210000)', () => {
    const bytes = writeZip([['a.txt', hello]])
    expect(writeZip([['a.txt', hello]])).toEqual(bytes)
    expect(new DataView(bytes.buffer, bytes.byteOffset).getUint32(10, true)).toBe(0x00210000)
  })

  test('without files is the 22 bytes of an empty archive (APPNOTE 4.3.16)', () => {
    expect([...writeZip([])]).toEqual([0x50, 0x4b, 5, 6, ...new Array(18).fill(0)])
  })
})

describe('openZip', () => {
  test('reads what writeZip wrote, in order', () => {
    const zip = openZip(
      writeZip([
        ['b/é.txt', hello],
        ['a.txt', strToU8('')],
      ]),
      LIMITS,
    )
    if (!zip.ok) throw new Error(zip.message)
    expect([...zip.value.keys()]).toEqual(['b/é.txt', 'a.txt'])
    const content = zip.value.get('b/é.txt')?.read()
    expect(content?.ok && strFromU8(content.value)).toBe(strFromU8(hello))
  })

  test('reads a stored archive made by another program (Python zipfile)', () => {
    const hex =
      '504b0304140000000000000021002639f4cb090000000900000005000000612e747874313233343536373839504b01021403140000000000000021002639f4cb0900000009000000050000000000000000000000800100000000612e747874504b05060000000001000100330000002c0000000000'
    const bytes = Uint8Array.from(hex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16))
    const zip = openZip(bytes, LIMITS)
    const content = zip.ok ? zip.value.get('a.txt')?.read() : undefined
    expect(content?.ok && strFromU8(content.value)).toBe('123456789')
  })

  for (const path of [
    '../up.txt',
    'a/../../up.txt',
    '/etc/up',
    'C:/up',
    'a\\..\\up',
    'a//b',
    './a',
  ]) {
    test(`refuses the path ${path}`, () => {
      expect(isSafePath(path)).toBe(false)
      expect(codeOf(zipSync({ [path]: hello }))).toBe('zip/unsafe-path')
    })
  }

  test('refuses a name that appears twice', () => {
    const bytes = zipSync({ 'a.txt': hello, 'b.txt': hello }, { level: 0 })
    const twice = strFromU8(bytes, true).replaceAll('b.txt', 'a.txt')
    expect(codeOf(strToU8(twice, true))).toBe('zip/duplicate')
  })

  test('refuses an entry whose claim is over the limit, before unpacking it', () => {
    expect(codeOf(zipSync({ 'bomb.csv': new Uint8Array(2e6) }))).toBe('zip/too-large')
  })

  test('stops unpacking when there is more than was claimed', () => {
    const bomb = withCentralField(zipSync({ 'bomb.csv': new Uint8Array(5e7) }), 24, 1000)
    expect(bomb.length).toBeLessThan(LIMITS.maxPackedBytes)
    expect(codeOf(bomb)).toBe('zip/damaged')
  })

  test('refuses too many entries, and too much in all', () => {
    const files = (count: number, size: number) =>
      Object.fromEntries(
        Array.from({ length: count }, (_, n) => [`${n}.csv`, new Uint8Array(size)]),
      )
    expect(codeOf(zipSync(files(11, 1)))).toBe('zip/too-large')
    expect(codeOf(zipSync(files(3, 9e5)))).toBe('zip/too-large')
  })

  test('finds a changed byte by the CRC', () => {
    const bytes = zipSync({ 'a.txt': hello }, { level: 0 })
    bytes[60] = (bytes[60] ?? 0) ^ 1
    expect(codeOf(bytes)).toBe('zip/damaged')
  })

  test('refuses encryption and unknown methods with a word on what to do', () => {
    expect(codeOf(withCentralField(zipSync({ 'a.txt': hello }), 8, 0x00080001))).toBe(
      'zip/unsupported',
    )
    expect(codeOf(withCentralField(zipSync({ 'a.txt': hello }), 8, 0x000e0000))).toBe(
      'zip/unsupported',
    )
  })

  test('cut at any length, or with any byte changed, it answers and never throws', () => {
    const bytes = zipSync({ 'a.txt': hello, 'b/c.txt': strToU8('x') })
    for (let length = 0; length < bytes.length; length++) {
      expect(codeOf(bytes.subarray(0, length))).not.toBe('read')
    }
    for (let at = 0; at < bytes.length; at++) {
      const changed = bytes.slice()
      changed[at] = (changed[at] ?? 0) ^ 0xff
      expect(typeof codeOf(changed)).toBe('string')
    }
  })

  test('a name like __proto__ is a name like any other', () => {
    const zip = openZip(writeZip([['x/__proto__', hello]]), LIMITS)
    expect(zip.ok && [...zip.value.keys()]).toEqual(['x/__proto__'])
  })
})
