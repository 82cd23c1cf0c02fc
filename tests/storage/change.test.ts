import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openStore } from '../../src/storage/open-store'
import type { Store } from '../../src/storage/store'
import { exampleLibrary, exampleSamples, exampleTake } from './examples'

let store: Store
let count = 0

const samples = exampleSamples(60)
const nothing = { library: exampleLibrary(), add: [], update: [], remove: [], restore: [] }

beforeEach(async () => {
  count += 1
  store = await openStore(`change-${count}`)
  await store.addFullLibrary({
    library: exampleLibrary(),
    recordings: [
      { recording: exampleTake(), samples },
      { recording: exampleTake({ id: 'other' }), samples },
    ],
  })
})

afterEach(() => store.close())

describe('a change of a library', () => {
  it('adds, changes facts, deletes and restores at once', async () => {
    await store.deleteRecordings(['other'])
    const changed = await store.changeLibrary({
      library: exampleLibrary({ name: 'Renamed' }),
      add: [{ recording: exampleTake({ id: 'new' }), samples }],
      update: [exampleTake({ note: 'low', sampleCount: 7 })],
      remove: [],
      restore: ['other'],
    })
    expect(changed.ok).toBe(true)
    const full = await store.loadFull('parade')
    expect(full?.library.name).toBe('Renamed')
    const facts = new Map(full?.recordings.map(({ recording }) => [recording.id, recording]))
    expect([...facts.keys()].sort()).toEqual(['new', 'other', exampleTake().id].sort())
    // Counts describe the samples, which nobody changes.
    expect(facts.get(exampleTake().id)).toMatchObject({ note: 'low', sampleCount: 60 })
  })

  it('that names a recording which is not there leaves everything as it was', async () => {
    const before = await store.loadFull('parade')
    const changed = await store.changeLibrary({
      ...nothing,
      library: exampleLibrary({ name: 'Renamed' }),
      add: [{ recording: exampleTake({ id: 'new' }), samples }],
      remove: ['nowhere'],
    })
    expect(changed).toMatchObject({ ok: false, code: 'storage/no-recording' })
    expect(await store.loadFull('parade')).toEqual(before)
  })

  it('that the disk has no room for says so and leaves everything as it was', async () => {
    const before = await store.loadFull('parade')
    const put = IDBObjectStore.prototype.add
    IDBObjectStore.prototype.add = function (this: IDBObjectStore, ...args) {
      const [value] = args as [{ recordingId?: string }]
      if (value.recordingId === 'new-1') throw new DOMException('no room', 'QuotaExceededError')
      return put.apply(this, args)
    }
    const changed = await store.changeLibrary({
      ...nothing,
      add: ['new-0', 'new-1'].map((id) => ({ recording: exampleTake({ id }), samples })),
      remove: ['other'],
    })
    IDBObjectStore.prototype.add = put
    expect(changed).toMatchObject({
      ok: false,
      code: 'storage/full',
      message: expect.stringMatching(/^The storage of this browser is full/),
    })
    expect(await store.loadFull('parade')).toEqual(before)
  })
})
