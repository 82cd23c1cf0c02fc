import { deflateSync, inflateSync, strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { type Salvaged, salvageLibrary } from '../../../src/shared/backup/salvage-library'
import { crc32 } from '../../../src/shared/format/crc32'
import { joinBytes } from '../../../src/shared/format/join-bytes'
import {
  libraryJson,
  readLibraryFile,
  writeLibraryFile,
} from '../../../src/shared/format/library-file'
import type { FullLibrary } from '../../../src/shared/model/library'
import { sampleLibrary } from '../format/sample-library'

const library = sampleLibrary()
const file = writeLibraryFile(library)
const json = libraryJson(library).json
const paths = libraryJson(library).document.recordings.map((one) => one.file)

function salvaged(bytes: Uint8Array, secondList: Uint8Array | null = null): Salvaged {
  const result = salvageLibrary(bytes, secondList)
  if (!result.ok) throw new Error(result.message)
  return result.value
}

/** Samples by recording id; ids are lost where only paths are known. */
function samplesById({ recordings }: FullLibrary) {
  return Object.fromEntries(recordings.map(({ recording, samples }) => [recording.id, samples]))
}
const original = samplesById(library)

function expectWholeOrListed({ full, lost }: Salvaged, mostLost: number, what: string): void {
  const back = samplesById(full)
  for (const [id, samples] of Object.entries(back)) {
    expect(samples, `${id}, ${what}`).toEqual(original[id])
  }
  expect(Object.keys(back).length + lost.length, what).toBe(library.recordings.length)
  expect(lost.length, what).toBeLessThanOrEqual(mostLost)
}

function flipped(bytes: Uint8Array, at: number, bit: number): Uint8Array {
  const copy = bytes.slice()
  copy[at]! ^= 1 << bit
  return copy
}

/** Where each path's data lie, by the local headers. */
function dataOf(path: string): { start: number; end: number } {
  const name = strToU8(path)
  const view = new DataView(file.buffer)
  for (let at = 0; at < file.length; at++) {
    if (view.getUint32(at, true) !== 0x04034b50) continue
    const found = file.subarray(at + 30, at + 30 + name.length)
    if (view.getUint16(at + 26, true) !== name.length || !found.every((b, i) => b === name[i])) {
      continue
    }
    const start = at + 30 + name.length
    return { start, end: start + view.getUint32(at + 18, true) }
  }
  throw new Error(`${path} is not there.`)
}

describe('a whole library file', () => {
  it('comes back as it was, with nothing lost', () => {
    expect(salvaged(file)).toEqual({ full: library, lost: [], from: 'whole-file' })
  })
})

describe('a damaged library file', () => {
  it('is refused as a whole by the usual reader: without salvage every take would be lost', () => {
    const { start } = dataOf(paths[0]!)
    expect(readLibraryFile(flipped(file, start + 3, 2)).ok).toBe(false)
    expect(readLibraryFile(file.subarray(0, file.length - 1)).ok).toBe(false)
  })

  it('with any one bit wrong loses one recording at most, and says which', () => {
    for (let at = 0; at < file.length; at++) {
      const bit = at % 8
      expectWholeOrListed(salvaged(flipped(file, at, bit), json), 1, `byte ${at}, bit ${bit}`)
    }
  })

  it('names what a wrong bit in the samples has cost', () => {
    for (const [index, path] of paths.entries()) {
      const { start, end } = dataOf(path)
      const { lost } = salvaged(flipped(file, (start + end) >> 1, 0))
      const { recording } = library.recordings[index]!
      const gesture = library.library.gestures.find(
        ({ id }) => recording.kind === 'take' && id === recording.gestureId,
      )
      expect(lost).toEqual([
        { gesture: gesture?.name ?? null, tester: recording.testerCode, file: path },
      ])
    }
  })

  it('cut short anywhere gives back every take before the cut', () => {
    for (let length = dataOf(paths[0]!).start; length < file.length; length++) {
      const result = salvaged(file.subarray(0, length))
      expectWholeOrListed(result, library.recordings.length, `${length} bytes`)
      const complete = paths.filter((path) => dataOf(path).end <= length)
      expect(result.full.recordings.length, `${length} bytes`).toBe(complete.length)
    }
  })

  it('without its directory gives back everything', () => {
    const { end } = dataOf(paths.at(-1)!)
    expect(salvaged(file.subarray(0, end)).full).toEqual(library)
  })

  it('whose beginning is gone gives back the rest by the second list', () => {
    const second = dataOf(paths[1]!)
    const { full, lost, from } = salvaged(file.subarray(second.start - 30 - paths[1]!.length), json)
    expect(from).toBe('second-list')
    expect(full.recordings).toEqual(library.recordings.slice(1))
    expect(lost.map((one) => one.file)).toEqual([paths[0]])
  })

  it('without any list still says gesture and tester, by the paths', () => {
    const { start } = dataOf('library.json')
    const { full, lost, from } = salvaged(flipped(file, start + 5, 1))
    expect(from).toBe('paths')
    expect(lost).toEqual([])
    const samples = full.recordings.map((one) => one.samples)
    expect(samples).toHaveLength(library.recordings.length)
    expect(samples).toEqual(expect.arrayContaining(Object.values(original)))
    expect(full.library.gestures.map(({ name }) => name)).toEqual(['Raise', 'Ring-twice'])
    expect(full.recordings.every(({ recording }) => recording.device.accelSign === 0)).toBe(true)
  })

  it('overwritten in the middle keeps what is before and behind', () => {
    const first = dataOf(paths[1]!)
    const copy = file.slice()
    copy.fill(0, first.start - 40, first.end - 2)
    const { full, lost } = salvaged(copy)
    expect(full.recordings.map(({ recording }) => recording.id)).toEqual(['t1', 't3', 'b1'])
    expect(lost).toHaveLength(1)
  })

  it('packed again by another program, with sizes behind the data, is read without its directory', () => {
    // A streamed ZIP as `zip -` writes it: local sizes are zero, descriptors follow (APPNOTE 4.3.9).
    const streamed = streamedZip([
      ['library.json', json],
      ...library.recordings.map(({ samples: _ }, i) => [paths[i]!, csvOf(paths[i]!)] as const),
    ])
    expect(salvaged(streamed).full).toEqual(library)
  })

  it('with one wrong number of rows lists that take', () => {
    const files: Record<string, Uint8Array> = { 'library.json': json }
    for (const path of paths) files[path] = csvOf(path)
    files[paths[2]!] = strToU8(new TextDecoder().decode(csvOf(paths[2]!)).replace(/[^\n]+\n$/, ''))
    const { lost } = salvaged(zipSync(files))
    expect(lost.map((one) => one.file)).toEqual([paths[2]])
  })

  it('that holds no whole take is refused in one sentence', () => {
    const result = salvageLibrary(new Uint8Array(2000).fill(0x50), null)
    expect(result).toMatchObject({ ok: false, code: 'salvage/nothing' })
  })

  it('of a newer version is refused as such', () => {
    const newer = strToU8(
      new TextDecoder().decode(json).replace(/"formatVersion": \d+/, '"formatVersion": 99'),
    )
    expect(salvageLibrary(zipSync({ 'library.json': newer }), null)).toMatchObject({
      code: 'library/newer',
    })
  })
})

function csvOf(path: string): Uint8Array {
  const { start, end } = dataOf(path)
  return inflateSync(file.subarray(start, end))
}

/** Local headers with sizes of zero and bit 3, data, descriptors; no directory. */
function streamedZip(files: readonly (readonly [string, Uint8Array])[]): Uint8Array {
  return joinBytes(
    files.flatMap(([path, content]) => {
      const name = strToU8(path)
      const head = new DataView(new ArrayBuffer(30))
      head.setUint32(0, 0x04034b50, true)
      head.setUint16(6, 0x0808, true)
      head.setUint16(8, 8, true)
      head.setUint16(26, name.length, true)
      const packed = deflateSync(content)
      const behind = new DataView(new ArrayBuffer(16))
      behind.setUint32(0, 0x08074b50, true)
      behind.setUint32(4, crc32(content), true)
      behind.setUint32(8, packed.length, true)
      behind.setUint32(12, content.length, true)
      return [new Uint8Array(head.buffer), name, packed, new Uint8Array(behind.buffer)]
    }),
  )
}
