import { readFileSync } from 'node:fs'
import { strFromU8, unzipSync } from 'fflate'
import { beforeAll, describe, expect, it } from 'vitest'
import { listFiles } from '../../../src/build/list-files'
import { repositoryPath } from '../../../src/build/paths'
import type { BackupContents, LibraryPlace } from '../../../src/shared/backup/contents'
import { findParts } from '../../../src/shared/backup/find-parts'
import { BACKUP_FORMAT_VERSION } from '../../../src/shared/backup/manifest'
import { readContents, readLibraryAt } from '../../../src/shared/backup/read-backup'
import { runFrom } from '../../../src/shared/collect/session-record'
import { crc32 } from '../../../src/shared/format/crc32'
import { keptModelOf } from '../../../src/shared/format/kept-model-schema'
import { readLibraryFile, writeLibraryFile } from '../../../src/shared/format/library-file'
import { openZip } from '../../../src/shared/format/zip-read'
import type { FullLibrary } from '../../../src/shared/model/library'
import { collectedLibrary } from '../format/collected-library'
import { COLLECTED_ITEMS } from './collected-items'
import { EXAMPLE_ITEMS, MADE_AT, makeBackup, renamed, sourceOf } from './example-backup'

const libraries = [
  renamed('north', 'North lantern'),
  renamed('south', 'South lantern'),
  renamed('third', 'Third'),
]
const EACH = libraries[0]!.recordings.length
const original = new Map(
  libraries.flatMap(({ recordings }) =>
    recordings.map(({ recording, samples }) => [recording.id, samples] as const),
  ),
)
let backup: Uint8Array

beforeAll(async () => {
  backup = await makeBackup(libraries)
})

async function contentsOf(bytes: Uint8Array): Promise<BackupContents> {
  const contents = await readContents(sourceOf(bytes))
  if (!contents.ok) throw new Error(contents.message)
  return contents.value
}

async function allOf(bytes: Uint8Array): Promise<FullLibrary[]> {
  const { libraries: found } = await contentsOf(bytes)
  const read = await Promise.all(found.map(({ place }) => readLibraryAt(sourceOf(bytes), place)))
  return read.map((one) => {
    if (!one.ok) throw new Error(one.message)
    return one.value.full
  })
}

describe('a whole backup', () => {
  it('gives back every library as it was, with its items', async () => {
    expect(await allOf(backup)).toEqual(libraries)
    const { madeAt, libraries: found, gone } = await contentsOf(backup)
    expect({ madeAt, gone }).toEqual({ madeAt: MADE_AT, gone: [] })
    expect(found.map(({ lost, from, itemCount }) => ({ lost, from, itemCount }))).toEqual([
      { lost: [], from: 'whole-file', itemCount: 2 },
      { lost: [], from: 'whole-file', itemCount: 0 },
      { lost: [], from: 'whole-file', itemCount: 0 },
    ])
    const first = await readLibraryAt(sourceOf(backup), found[0]!.place)
    expect(first.ok && first.value.items).toEqual(EXAMPLE_ITEMS)
  })

  it('is an ordinary ZIP of ordinary library files', () => {
    const opened = openZip(backup, {
      maxPackedBytes: 1e6,
      maxEntries: 20,
      maxEntryBytes: 1e6,
      maxTotalBytes: 1e6,
    })
    if (!opened.ok) throw new Error(opened.message)
    expect([...opened.value.keys()]).toEqual([
      'movewright-backup.json',
      'libraries/01-North-lantern.zip',
      'libraries/02-South-lantern.zip',
      'libraries/03-Third.zip',
      'lists/01.json',
      'lists/02.json',
      'lists/03.json',
      'items/01.json',
    ])
    const files = unzipSync(backup)
    const south = readLibraryFile(files['libraries/02-South-lantern.zip']!)
    expect(south.ok && south.value).toEqual(libraries[1])
    expect(strFromU8(files['lists/03.json']!)).toContain('"name": "Third"')
  })

  it('is not read as a whole to find its parts', async () => {
    const source = sourceOf(backup)
    await findParts(source)
    expect(source.asked).toBeLessThan(backup.length)
    const parts = 1 + 3 + 3 + 1
    expect(source.asked).toBeLessThanOrEqual(parts * 500 + 2000)
  })
})

describe('a damaged backup', () => {
  it('with any one bit wrong loses one recording at most, and lists it', async () => {
    // Every byte around the borders of parts, where headers are, and every 23rd of all others.
    const parts = await findParts(sourceOf(backup))
    const stretches = parts.ok
      ? parts.value.places.flatMap(({ library, list, items }) => [library, list, items])
      : []
    const borders = stretches.flatMap((one) => (one === null ? [] : [one.start, one.end]))
    for (let at = 0; at < backup.length; at++) {
      const isNearBorder = borders.some((border) => at >= border - 60 && at < border + 4)
      if (!isNearBorder && at % 23 !== 0) continue
      const bytes = backup.slice()
      bytes[at]! ^= 1 << (at % 8)
      const { libraries: found, gone } = await contentsOf(bytes)
      const where = `byte ${at}`
      expect(gone, where).toEqual([])
      const lost = found.flatMap((one) => one.lost)
      expect(lost.length, where).toBeLessThanOrEqual(1)
      const count = found.reduce((sum, one) => sum + one.recordings.length, 0)
      expect(count + lost.length, where).toBe(3 * EACH)
      expect(found.map(({ library }) => library.name).sort(), where).toEqual(
        ['North lantern', 'South lantern', 'Third'].sort(),
      )
    }
  })

  it('gives back what it gives back unaltered', async () => {
    for (let at = 0; at < backup.length; at += 41) {
      const bytes = backup.slice()
      bytes[at]! ^= 0x10
      for (const { recordings } of await allOf(bytes)) {
        for (const { recording, samples } of recordings) {
          expect(samples, `${recording.id}, byte ${at}`).toEqual(original.get(recording.id))
        }
      }
    }
  })

  it('cut short keeps the libraries before the cut and names those behind it', async () => {
    const parts = await findParts(sourceOf(backup))
    const second = parts.ok ? parts.value.places[1]!.library : { start: 0, end: 0 }
    const { libraries: found, gone } = await contentsOf(backup.subarray(0, second.start + 40))
    expect(found.map(({ library, recordings }) => [library.name, recordings.length])).toEqual([
      ['North lantern', EACH],
    ])
    expect(gone).toEqual([
      { name: 'South lantern', takes: 3 },
      { name: 'Third', takes: 3 },
    ])
  })

  it('without its beginning keeps what follows', async () => {
    const parts = await findParts(sourceOf(backup))
    const first = parts.ok ? parts.value.places[0]!.library : { start: 0, end: 0 }
    const middle = (first.start + first.end) >> 1
    const { libraries: found } = await contentsOf(backup.subarray(middle))
    const whole = found.filter(({ lost }) => lost.length === 0)
    expect(whole.map(({ library }) => library.name)).toEqual(['South lantern', 'Third'])
    const [rest] = found.filter(({ lost }) => lost.length > 0)
    expect(rest?.library.name).toBe('North lantern')
    expect(rest!.recordings.length + rest!.lost.length).toBe(EACH)
  })

  it('with a library wiped out by zeros says which takes are gone, by the second list', async () => {
    const parts = await findParts(sourceOf(backup))
    const { start, end } = parts.ok ? parts.value.places[1]!.library : { start: 0, end: 0 }
    const bytes = backup.slice()
    bytes.fill(0, start, end)
    const { libraries: found } = await contentsOf(bytes)
    const south = found.find(({ library }) => library.name === 'South lantern')
    expect(south?.recordings).toEqual([])
    expect(south?.lost.map(({ gesture, tester }) => `${gesture} ${tester}`)).toEqual([
      'Raise A1',
      'Raise A1',
      'Ring, twice B 2',
      'null A1',
    ])
  })

  it('with one bad sector anywhere gives back every library, and what it lost of each', async () => {
    const sector = 512
    for (let start = 0; start < backup.length; start += 200) {
      const bytes = backup.slice()
      bytes.fill(0, start, start + sector)
      const { libraries: found, gone } = await contentsOf(bytes)
      expect(gone, `sector at ${start}`).toEqual([])
      expect(found.length, `sector at ${start}`).toBe(3)
      for (const { recordings, lost } of found) expect(recordings.length + lost.length).toBe(EACH)
    }
  })

  it('with a library and its list gone says so, also when another has its name', async () => {
    const same = await makeBackup([renamed('north', 'Lantern'), renamed('south', 'Lantern')])
    const parts = await findParts(sourceOf(same))
    if (!parts.ok) throw new Error(parts.message)
    const [, { library, list }] = parts.value.places as [LibraryPlace, LibraryPlace]
    const bytes = same.slice()
    bytes.fill(0, library.start, library.end)
    bytes.fill(0, list!.start - 60, list!.end)
    const { libraries: found, gone } = await contentsOf(bytes)
    expect(found.map((one) => one.library.id)).toEqual(['north'])
    expect(gone).toEqual([{ name: 'Lantern', takes: 3 }])
  })

  it('that is none is refused in one sentence', async () => {
    expect(await readContents(sourceOf(new Uint8Array(5000)))).toMatchObject({
      ok: false,
      code: 'salvage/nothing',
    })
  })

  it('of a newer version is refused as such', async () => {
    const text = strFromU8(backup, true).replace('"formatVersion": 1,', '"formatVersion": 9,')
    const newer = Uint8Array.from(text, (character) => character.charCodeAt(0))
    const view = new DataView(newer.buffer)
    const start = 30 + view.getUint16(26, true)
    view.setUint32(14, crc32(newer.subarray(start, start + view.getUint32(18, true))), true)
    expect(await readContents(sourceOf(newer))).toMatchObject({ ok: false, code: 'backup/newer' })
  })
})

describe('older files', () => {
  const fixtures = listFiles(repositoryPath('tests/shared/format')).filter((path) =>
    /^library-\d+\.zip$/.test(path),
  )

  it.each(fixtures)('%s restores as a backup of one library', async (name) => {
    const bytes = new Uint8Array(readFileSync(repositoryPath(`tests/shared/format/${name}`)))
    const { libraries: found, madeAt } = await contentsOf(bytes)
    expect(madeAt).toBeNull()
    expect(found).toHaveLength(1)
    expect(found[0]).toMatchObject({ lost: [], from: 'whole-file' })
    expect(found[0]!.recordings.length).toBeGreaterThan(0)
  })

  it('the backup of version 1 that was kept restores', async () => {
    const path = repositoryPath('tests/shared/backup/backup-1.zip')
    const bytes = new Uint8Array(readFileSync(path))
    const full = await allOf(bytes)
    expect(full).toEqual([renamed('north', 'North lantern'), renamed('south', 'South lantern')])
  })

  it('one with all that is kept beside a library restores, each part fit for use', async () => {
    const path = repositoryPath(`tests/shared/backup/backup-${BACKUP_FORMAT_VERSION}-collected.zip`)
    const bytes = new Uint8Array(readFileSync(path))
    expect(await allOf(bytes)).toEqual([collectedLibrary()])
    const [found] = (await contentsOf(bytes)).libraries
    expect(found).toMatchObject({ lost: [], from: 'whole-file' })
    const read = await readLibraryAt(sourceOf(bytes), found!.place)
    const items = read.ok ? read.value.items : []
    expect(items).toEqual(COLLECTED_ITEMS)
    const [model, session] = items.map(({ value }) => value)
    expect(keptModelOf(model)).toEqual(model)
    expect(runFrom(session)?.outcomes).toHaveLength(3)
  })

  it('a library file written today is a backup of one library too', async () => {
    expect(await allOf(writeLibraryFile(libraries[0]!))).toEqual([libraries[0]])
  })
})
