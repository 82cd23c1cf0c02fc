import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { fail, ok } from '../../src/shared/model/result'
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

describe('a change planned on what is stored', () => {
  it('sees it as it is in that moment, and nothing comes between', async () => {
    const renamed = exampleLibrary({ name: 'South lantern' })
    const [, planned] = await Promise.all([
      // Asked for first, so it is carried out first; the plan is made after it.
      store.putLibrary(renamed),
      store.planChange('parade', ({ library, recordings }) =>
        ok({ ...nothing, library: { ...library, gestures: [] }, remove: [recordings[0]!.id] }),
      ),
      store.updateRecording(exampleTake({ note: 'low' })),
    ])
    expect(planned).toMatchObject({ ok: true, value: { library: { name: 'South lantern' } } })
    const facts = await store.loadFacts('parade')
    expect(facts?.library).toEqual({ ...renamed, gestures: [] })
    expect(facts?.recordings).toHaveLength(1)
  })

  it('that cannot be made gives its failure and changes nothing', async () => {
    const before = await store.loadFull('parade')
    const refused = fail('test/refused', 'Not today: come again tomorrow.')
    expect(await store.planChange('parade', () => refused)).toEqual(refused)
    expect(await store.loadFull('parade')).toEqual(before)
  })

  it('that names a recording which is not there leaves everything as it was', async () => {
    const before = await store.loadFull('parade')
    const planned = await store.planChange('parade', ({ library }) =>
      ok({ ...nothing, library: { ...library, name: 'Renamed' }, remove: ['nowhere'] }),
    )
    expect(planned).toMatchObject({ ok: false, code: 'storage/no-recording' })
    expect(await store.loadFull('parade')).toEqual(before)
  })

  it('is not asked for a library that is deleted or was never there', async () => {
    await store.deleteLibrary('parade')
    for (const id of ['parade', 'nowhere']) {
      const planned = await store.planChange(id, () => {
        throw new Error('asked')
      })
      expect(planned).toMatchObject({ ok: false, code: 'storage/no-library' })
    }
  })
})
