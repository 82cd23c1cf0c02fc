import 'fake-indexeddb/auto'
import { openDB } from 'idb'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openStore } from '../../src/storage/open-store'
import { restoreChunk, restoreLibrary, restoreRecording } from '../../src/storage/restore'
import type { Store } from '../../src/storage/store'
import { samplePlan } from '../shared/collect/samples'
import { exampleBackground, exampleLibrary, exampleSamples, exampleTake } from './examples'

describe('what comes out of the database', () => {
  const stored = { id: 'parade', deletedAt: null, library: exampleLibrary() }

  it('passes when it is whole', () => {
    expect(restoreLibrary(stored)).toBe(stored)
    expect(restoreRecording(exampleTake({ trim: { startMs: 0, endMs: 1 } }))).not.toBeNull()
    expect(restoreRecording(exampleBackground())).not.toBeNull()
    expect(restoreChunk(exampleSamples(3))).not.toBeNull()
    expect(restoreChunk(exampleSamples(0))).not.toBeNull()
  })

  it('keeps a library with a plan that cannot be read, and leaves out that plan', () => {
    const plans = [samplePlan({ gestures: [] }), samplePlan()]
    const library = exampleLibrary({ plans })
    const restored = restoreLibrary({ ...stored, library })
    expect(restored?.library).toEqual({ ...library, plans: [plans[1]] })
    const damaged = { ...library, plans: 'none' as never }
    expect(restoreLibrary({ ...stored, library: damaged })?.library.plans).toEqual([])
  })

  it.each([
    ['nothing', undefined],
    ['a text', 'library'],
    ['a library under another id', { ...stored, id: 'other' }],
    ['a library without a name', { ...stored, library: { ...exampleLibrary(), name: undefined } }],
    [
      'a mounting of eight numbers',
      {
        ...stored,
        library: exampleLibrary({
          target: { ...stored.library.target, mounting: [1, 0, 0, 0, 1, 0, 0, 0] as never },
        }),
      },
    ],
    [
      'a gesture without an id',
      { ...stored, library: exampleLibrary({ gestures: [{ id: '', name: 'x', note: '' }] }) },
    ],
    [
      'a matcher unheard of',
      {
        ...stored,
        library: exampleLibrary({
          training: { ...stored.library.training, matcher: 'guess' as never },
        }),
      },
    ],
    ['a date of deletion that is none', { ...stored, deletedAt: 'yesterday' }],
  ])('refuses %s for a library', (_what, value) => {
    expect(restoreLibrary(value)).toBeNull()
  })

  it.each([
    ['null', null],
    ['a kind unheard of', { ...exampleTake(), kind: 'song' }],
    ['a take without a gesture', { ...exampleTake(), gestureId: undefined }],
    [
      'a rate that is no number',
      exampleTake({ device: { ...exampleTake().device, rateHz: Number.NaN } }),
    ],
    ['a sign of 2', { ...exampleTake(), device: { ...exampleTake().device, accelSign: 2 } }],
    ['a gap without an end', { ...exampleTake(), gaps: [{ startMs: 1 }] }],
    ['a negative count', exampleTake({ sampleCount: -1 })],
  ])('refuses %s for a recording', (_what, value) => {
    expect(restoreRecording(value)).toBeNull()
  })

  it.each([
    ['values of another length', { tMs: new Float64Array(2), values: new Float32Array(11) }],
    ['plain arrays', { tMs: [0], values: [0, 0, 0, 0, 0, 0] }],
    ['double precision values', { tMs: new Float64Array(1), values: new Float64Array(6) }],
    ['time that goes back', { tMs: Float64Array.of(2, 1), values: new Float32Array(12) }],
    [
      'a value that is no number',
      { tMs: new Float64Array(1), values: Float32Array.of(0, 0, 0, 0, 0, Number.NaN) },
    ],
  ])('refuses %s for samples', (_what, value) => {
    expect(restoreChunk(value)).toBeNull()
  })
})

describe('a damaged database', () => {
  let store: Store
  let count = 0

  beforeEach(async () => {
    count += 1
    store = await openStore(`damaged-${count}`)
    await store.addFullLibrary({
      library: exampleLibrary(),
      recordings: ['whole', 'hurt'].map((id) => ({
        recording: exampleTake({ id }),
        samples: exampleSamples(60),
      })),
    })
  })

  afterEach(() => store.close())

  async function damage(storeName: string, value: unknown): Promise<void> {
    const db = await openDB(`damaged-${count}`)
    await db.put(storeName, value)
    db.close()
  }

  it('gives out the recordings that are whole and counts the other once', async () => {
    await damage('recordings', { ...exampleTake({ id: 'hurt' }), device: null })
    expect((await store.listRecordings('parade')).map(({ id }) => id)).toEqual(['whole'])
    expect((await store.loadFull('parade'))?.recordings).toHaveLength(1)
    expect((await store.facts()).unreadableItems).toBe(1)
  })

  it('gives out the other recordings when samples are damaged', async () => {
    await damage('chunks', { recordingId: 'hurt', index: 0, tMs: new Float64Array(3), values: 'x' })
    expect(await store.loadSamples('hurt')).toBeNull()
    expect(
      (await store.loadFull('parade'))?.recordings.map(({ recording }) => recording.id),
    ).toEqual(['whole'])
    expect((await store.facts()).unreadableItems).toBe(1)
  })

  it('does not pass off a recording with a missing stretch as whole', async () => {
    await damage('chunks', { ...exampleSamples(60, 120), recordingId: 'hurt', index: 2 })
    expect(await store.loadSamples('hurt')).toBeNull()
  })

  it('gives out the other libraries when one is damaged', async () => {
    await store.putLibrary(exampleLibrary({ id: 'second' }))
    await damage('libraries', { id: 'parade', deletedAt: null, library: { name: 'half' } })
    expect((await store.listLibraries()).map(({ id }) => id)).toEqual(['second'])
    expect(await store.loadFull('parade')).toBeNull()
  })

  it('still opens and reports when journals are damaged', async () => {
    await damage('journals', { id: 'torn', kind: 'take' })
    expect(await store.unfinished()).toEqual([])
    expect((await store.facts()).unreadableItems).toBe(1)
    await store.discardUnfinished('torn')
  })
})

describe('errors of the database', () => {
  it('of a full disk say so and what to do, and nothing is stored', async () => {
    const store = await openStore('full')
    const put = IDBObjectStore.prototype.add
    IDBObjectStore.prototype.add = function (this: IDBObjectStore, ...args) {
      if (this.name === 'chunks') throw new DOMException('no room', 'QuotaExceededError')
      return put.apply(this, args)
    }
    const added = await store.addFullLibrary({
      library: exampleLibrary(),
      recordings: [{ recording: exampleTake(), samples: exampleSamples(60) }],
    })
    IDBObjectStore.prototype.add = put
    expect(added).toMatchObject({
      ok: false,
      code: 'storage/full',
      message: expect.stringMatching(/^The storage of this browser is full.*free space/),
    })
    expect(await store.listLibraries()).toEqual([])
    store.close()
  })
})
