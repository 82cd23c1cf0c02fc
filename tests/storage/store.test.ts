import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openStore } from '../../src/storage/open-store'
import type { Store } from '../../src/storage/store'
import { exampleBackground, exampleLibrary, exampleSamples, exampleTake } from './examples'

let store: Store
let count = 0

beforeEach(async () => {
  count += 1
  store = await openStore(`store-${count}`)
})

afterEach(() => store.close())

describe('libraries', () => {
  it('come back as they were put, oldest first', async () => {
    const late = exampleLibrary({ id: 'late', createdAt: '2026-05-01T00:00:00.000Z' })
    await store.putLibrary(late)
    await store.putLibrary(exampleLibrary())
    expect(await store.listLibraries()).toEqual([exampleLibrary(), late])
  })

  it('are gone when deleted and whole again when restored', async () => {
    await store.addFullLibrary({
      library: exampleLibrary(),
      recordings: [{ recording: exampleTake(), samples: exampleSamples(60) }],
    })
    await store.deleteLibrary('parade')
    expect(await store.listLibraries()).toEqual([])
    expect(await store.loadFull('parade')).toBeNull()
    await store.restoreLibrary('parade')
    expect((await store.loadFull('parade'))?.recordings).toHaveLength(1)
  })

  it('stay deleted when they are put again', async () => {
    await store.putLibrary(exampleLibrary())
    await store.deleteLibrary('parade')
    await store.putLibrary(exampleLibrary({ name: 'Renamed' }))
    expect(await store.listLibraries()).toEqual([])
  })

  it('that are not stored cannot be deleted, and the failure says so', async () => {
    expect(await store.deleteLibrary('nowhere')).toMatchObject({
      ok: false,
      code: 'storage/no-library',
    })
  })
})

describe('a full library', () => {
  it('comes back with samples equal to the bit and counts taken from them', async () => {
    const recording = exampleTake({ sampleCount: 7, durationMs: 7 })
    const samples = exampleSamples(61)
    await store.addFullLibrary({ library: exampleLibrary(), recordings: [{ recording, samples }] })
    expect(await store.loadFull('parade')).toEqual({
      library: exampleLibrary(),
      recordings: [{ recording: { ...recording, sampleCount: 61, durationMs: 1000 }, samples }],
    })
  })

  it('is stored whole or not at all when one recording is already there', async () => {
    await store.addFullLibrary({
      library: exampleLibrary(),
      recordings: [{ recording: exampleTake(), samples: exampleSamples(10) }],
    })
    const second = await store.addFullLibrary({
      library: exampleLibrary({ id: 'second' }),
      recordings: [
        { recording: exampleTake({ id: 'new' }), samples: exampleSamples(10) },
        { recording: exampleTake(), samples: exampleSamples(10) },
      ],
    })
    expect(second).toMatchObject({ ok: false, code: 'storage/exists' })
    expect((await store.listLibraries()).map(({ id }) => id)).toEqual(['parade'])
    expect(await store.loadSamples('new')).toBeNull()
  })

  it('is refused when samples go back in time, with nothing stored', async () => {
    const samples = exampleSamples(3)
    samples.tMs[2] = 1
    const added = await store.addFullLibrary({
      library: exampleLibrary(),
      recordings: [{ recording: exampleTake(), samples }],
    })
    expect(added).toMatchObject({ ok: false, code: 'storage/invalid' })
    expect(await store.listLibraries()).toEqual([])
  })

  it('stores a view of a large buffer without the rest of the buffer', async () => {
    const large = exampleSamples(1000)
    const samples = { tMs: large.tMs.subarray(10, 20), values: large.values.subarray(60, 120) }
    await store.addFullLibrary({
      library: exampleLibrary(),
      recordings: [{ recording: exampleTake(), samples }],
    })
    const loaded = await store.loadSamples('take-1')
    expect(loaded?.values.buffer.byteLength).toBe(60 * 4)
    expect(loaded).toEqual({ tMs: large.tMs.slice(10, 20), values: large.values.slice(60, 120) })
  })
})

describe('recordings', () => {
  beforeEach(async () => {
    await store.addFullLibrary({
      library: exampleLibrary(),
      recordings: [
        { recording: exampleTake(), samples: exampleSamples(60) },
        {
          recording: exampleBackground({ recordedAt: '2026-03-01T19:00:00.000Z' }),
          samples: exampleSamples(120),
        },
      ],
    })
  })

  it('are listed newest first', async () => {
    const ids = (await store.listRecordings('parade')).map(({ id }) => id)
    expect(ids).toEqual(['background-1', 'take-1'])
  })

  it('take new facts but never other samples, counts or another library', async () => {
    const changed = exampleTake({
      gestureId: 'swing',
      testerCode: 'B',
      trim: { startMs: 100, endMs: 400 },
      libraryId: 'elsewhere',
      sampleCount: 1,
      durationMs: 1,
    })
    expect(await store.updateRecording(changed)).toEqual({ ok: true, value: null })
    const stored = (await store.listRecordings('parade')).find(({ id }) => id === 'take-1')
    expect(stored).toMatchObject({
      gestureId: 'swing',
      testerCode: 'B',
      trim: { startMs: 100, endMs: 400 },
      libraryId: 'parade',
      sampleCount: 60,
    })
    expect(await store.loadSamples('take-1')).toEqual(exampleSamples(60))
  })

  it('are deleted and restored all together or not at all', async () => {
    const half = await store.deleteRecordings(['take-1', 'nowhere'])
    expect(half).toMatchObject({ ok: false, code: 'storage/no-recording' })
    expect(await store.listRecordings('parade')).toHaveLength(2)
    await store.deleteRecordings(['take-1', 'background-1'])
    expect(await store.listRecordings('parade')).toEqual([])
    await store.restoreRecordings(['take-1', 'background-1'])
    expect(await store.listRecordings('parade')).toHaveLength(2)
  })

  it('are not added to a library that is not there', async () => {
    const recording = exampleTake({ id: 'lost', libraryId: 'nowhere' })
    const added = await store.addRecordings([{ recording, samples: exampleSamples(5) }])
    expect(added).toMatchObject({ ok: false, code: 'storage/no-library' })
    expect(await store.loadSamples('lost')).toBeNull()
  })
})

describe('purging', () => {
  const LATER = '9999-01-01T00:00:00.000Z'

  beforeEach(async () => {
    await store.addFullLibrary({
      library: exampleLibrary(),
      recordings: [
        { recording: exampleTake(), samples: exampleSamples(60) },
        { recording: exampleTake({ id: 'take-2' }), samples: exampleSamples(60) },
      ],
    })
  })

  it('removes deleted recordings for good and keeps the others', async () => {
    await store.deleteRecordings(['take-1'])
    await store.purgeDeleted(LATER)
    expect(await store.loadSamples('take-1')).toBeNull()
    expect(await store.restoreRecordings(['take-1'])).toMatchObject({ ok: false })
    expect(await store.loadSamples('take-2')).toEqual(exampleSamples(60))
  })

  it('leaves what was deleted after the time given', async () => {
    await store.deleteRecordings(['take-1'])
    await store.purgeDeleted('2000-01-01T00:00:00.000Z')
    expect(await store.restoreRecordings(['take-1'])).toEqual({ ok: true, value: null })
  })

  it('takes along every recording and journal of a deleted library', async () => {
    const journal = await store.openJournal(exampleTake({ id: 'running' }))
    if (journal.ok) await journal.value.append(exampleSamples(60))
    await store.deleteLibrary('parade')
    await store.purgeDeleted(LATER)
    expect(await store.loadSamples('take-2')).toBeNull()
    expect(await store.restoreLibrary('parade')).toMatchObject({ ok: false })
    expect(await store.unfinished()).toEqual([])
  })
})
