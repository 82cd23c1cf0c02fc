import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { openStore } from '../../src/storage/open-store'
import type { Journal, Store } from '../../src/storage/store'
import { exampleLibrary, exampleSamples, exampleTake } from './examples'

let store: Store
let count = 0

beforeEach(async () => {
  count += 1
  store = await openStore(`journal-${count}`)
  await store.putLibrary(exampleLibrary())
})

afterEach(() => store.close())

async function begin(id = 'take-1'): Promise<Journal> {
  const opened = await store.openJournal(exampleTake({ id }))
  if (!opened.ok) throw new Error(opened.message)
  return opened.value
}

/** The database as it is found after the tab that wrote it was killed. */
const afterKill = () => openStore(`journal-${count}`)

describe('a journal', () => {
  it('becomes a recording of all its chunks in order, and is gone', async () => {
    const journal = await begin()
    await journal.append(exampleSamples(60))
    await journal.append(exampleSamples(60, 60))
    await journal.append(exampleSamples(7, 120))
    const finished = await journal.finish(exampleTake({ note: 'done' }))
    expect(finished).toMatchObject({
      ok: true,
      value: { id: 'take-1', note: 'done', sampleCount: 127, durationMs: 2100 },
    })
    expect(await store.loadSamples('take-1')).toEqual(exampleSamples(127))
    expect(await store.unfinished()).toEqual([])
  })

  it('keeps the order of appends that were not waited for', async () => {
    const journal = await begin()
    await Promise.all([0, 50, 100].map((row) => journal.append(exampleSamples(50, row))))
    await journal.finish(exampleTake())
    expect(await store.loadSamples('take-1')).toEqual(exampleSamples(150))
  })

  it('holds what was appended even if the block is changed or transferred afterwards', async () => {
    const journal = await begin()
    const whole = exampleSamples(100)
    const block = { tMs: whole.tMs.subarray(0, 60), values: whole.values.subarray(0, 360) }
    const written = journal.append(block)
    whole.values.fill(0)
    await written
    await journal.finish(exampleTake())
    expect(await store.loadSamples('take-1')).toEqual(exampleSamples(60))
  })

  it('leaves nothing behind when it is discarded', async () => {
    const journal = await begin()
    await journal.append(exampleSamples(60))
    await journal.discard()
    expect(await (await afterKill()).unfinished()).toEqual([])
    expect(await journal.append(exampleSamples(60, 60))).toMatchObject({
      ok: false,
      code: 'storage/no-journal',
    })
    expect(await journal.finish(exampleTake())).toMatchObject({ code: 'storage/no-journal' })
  })

  it('that could not be removed holds nobody up: it is offered as cut off', async () => {
    const journal = await begin()
    await journal.append(exampleSamples(60))
    const remove = vi.spyOn(IDBObjectStore.prototype, 'delete').mockImplementation(() => {
      throw new DOMException('The disk is gone.', 'UnknownError')
    })
    await expect(journal.discard()).rejects.toMatchObject({ name: 'StorageError' })
    remove.mockRestore()
    expect((await store.unfinished()).map(({ recording }) => recording.id)).toEqual(['take-1'])
  })

  it('is refused for a library that is not there', async () => {
    const opened = await store.openJournal(exampleTake({ libraryId: 'nowhere' }))
    expect(opened).toMatchObject({ ok: false, code: 'storage/no-library' })
  })

  it('is not taken for unfinished by the tab that writes it', async () => {
    await (await begin()).append(exampleSamples(60))
    expect(await store.unfinished()).toEqual([])
  })
})

describe('after a kill', () => {
  it('a journal is given back with what was appended', async () => {
    const journal = await begin()
    await journal.append(exampleSamples(60))
    await journal.append(exampleSamples(60, 60))
    const reopened = await afterKill()
    const [left] = await reopened.unfinished()
    expect(left).toEqual({
      recording: exampleTake({ sampleCount: 120, durationMs: 119_000 / 60 }),
      samples: exampleSamples(120),
    })
    expect(await reopened.listRecordings('parade')).toEqual([])
  })

  it('a journal can be finished, once', async () => {
    await (await begin()).append(exampleSamples(60))
    const reopened = await afterKill()
    const finished = await reopened.finishUnfinished('take-1', exampleTake({ testerCode: 'B' }))
    expect(finished).toMatchObject({ ok: true, value: { testerCode: 'B', sampleCount: 60 } })
    expect(await reopened.finishUnfinished('take-1', exampleTake())).toMatchObject({ ok: false })
    expect(await reopened.listRecordings('parade')).toHaveLength(1)
    expect(await reopened.unfinished()).toEqual([])
  })

  it('a journal can be discarded', async () => {
    await (await begin()).append(exampleSamples(60))
    const reopened = await afterKill()
    await reopened.discardUnfinished('take-1')
    expect(await reopened.unfinished()).toEqual([])
    expect(await reopened.loadSamples('take-1')).toBeNull()
  })

  it('a journal without a single sample is not offered', async () => {
    await begin()
    expect(await (await afterKill()).unfinished()).toEqual([])
  })

  it('journals come oldest first', async () => {
    for (const [id, minute] of [
      ['late', 9],
      ['early', 1],
    ] as const) {
      const opened = await store.openJournal(
        exampleTake({ id, recordedAt: `2026-03-01T18:0${minute}:00.000Z` }),
      )
      if (opened.ok) await opened.value.append(exampleSamples(10))
    }
    const ids = (await (await afterKill()).unfinished()).map(({ recording }) => recording.id)
    expect(ids).toEqual(['early', 'late'])
  })
})
