import 'fake-indexeddb/auto'
import { openDB } from 'idb'
import { describe, expect, it, vi } from 'vitest'
import { SCHEMA_STEPS, SCHEMA_VERSION, type SchemaStep } from '../../src/storage/migrations'
import { openStore } from '../../src/storage/open-store'
import { exampleLibrary, exampleSamples, exampleTake } from './examples'

/** A step that a later version might bring, to try the machinery with. */
const laterStep: SchemaStep = (_db, transaction) => {
  transaction.objectStore('recordings').createIndex('later' as 'library', 'testerCode')
}
const failingStep: SchemaStep = (db, transaction) => {
  laterStep(db, transaction)
  throw new Error('this step fails half way')
}

describe('the schema', () => {
  it('is made from nothing at the present version', async () => {
    const store = await openStore('fresh')
    store.close()
    const db = await openDB('fresh')
    expect(db.version).toBe(SCHEMA_VERSION)
    expect([...db.objectStoreNames]).toEqual([
      'chunks',
      'journals',
      'libraries',
      'marks',
      'models',
      'recordings',
      'results',
      'sessions',
    ])
    db.close()
  })

  it.each(SCHEMA_STEPS.map((_, step) => step + 1))(
    'keeps every take that version %i stored',
    async (version) => {
      const name = `from-${version}`
      const before = await openStore(name, { steps: SCHEMA_STEPS.slice(0, version) })
      await before.addFullLibrary({
        library: exampleLibrary(),
        recordings: [{ recording: exampleTake(), samples: exampleSamples(60) }],
      })
      before.close()
      const after = await openStore(name)
      expect((await after.loadFull('parade'))?.recordings[0]?.samples).toEqual(exampleSamples(60))
      after.close()
    },
  )

  it('keeps every take through a step to a later version', async () => {
    const before = await openStore('stepping')
    await before.addFullLibrary({
      library: exampleLibrary(),
      recordings: [{ recording: exampleTake(), samples: exampleSamples(60) }],
    })
    before.close()
    const after = await openStore('stepping', { steps: [...SCHEMA_STEPS, laterStep] })
    const full = await after.loadFull('parade')
    expect(full?.recordings[0]?.samples).toEqual(exampleSamples(60))
    after.close()
  })

  it('stays as it was, data and version, when a step fails half way', async () => {
    const before = await openStore('failing')
    await before.putLibrary(exampleLibrary())
    before.close()
    const opening = openStore('failing', { steps: [...SCHEMA_STEPS, failingStep] })
    await expect(opening).rejects.toMatchObject({
      code: 'storage/upgrade-failed',
      message: expect.stringContaining('left as they were'),
      cause: expect.objectContaining({ message: 'this step fails half way' }),
    })
    const db = await openDB('failing')
    expect(db.version).toBe(SCHEMA_VERSION)
    expect([...db.transaction('recordings').store.indexNames]).toEqual(['deleted', 'library'])
    db.close()
    const again = await openStore('failing')
    expect(await again.listLibraries()).toEqual([exampleLibrary()])
    again.close()
  })

  it('leaves no database behind when the very first step fails', async () => {
    await expect(openStore('never', { steps: [failingStep] })).rejects.toMatchObject({
      code: 'storage/upgrade-failed',
    })
    const names = (await indexedDB.databases()).map(({ name }) => name)
    expect(names).not.toContain('never')
  })

  it('written by a newer app is refused in one clear sentence and not touched', async () => {
    const newer = await openStore('newer', { steps: [...SCHEMA_STEPS, laterStep] })
    await newer.putLibrary(exampleLibrary())
    newer.close()
    await expect(openStore('newer')).rejects.toMatchObject({
      code: 'storage/newer',
      message: expect.stringMatching(/^The libraries on this device were stored by a newer .*\.$/),
    })
    const again = await openStore('newer', { steps: [...SCHEMA_STEPS, laterStep] })
    expect(await again.listLibraries()).toHaveLength(1)
    again.close()
  })
})

describe('two tabs', () => {
  it('the older gives way to the newer and says what to do', async () => {
    const onSuperseded = vi.fn()
    const older = await openStore('tabs', { onSuperseded })
    await older.putLibrary(exampleLibrary())
    const newer = await openStore('tabs', { steps: [...SCHEMA_STEPS, laterStep] })
    expect(await newer.listLibraries()).toHaveLength(1)
    expect(onSuperseded).toHaveBeenCalledWith(expect.stringContaining('reload this page'))
    expect(await older.putLibrary(exampleLibrary())).toMatchObject({
      ok: false,
      code: 'storage/superseded',
    })
    await expect(older.listLibraries()).rejects.toMatchObject({ code: 'storage/superseded' })
    newer.close()
  })

  it('the older ends its recording first while the newer says that it waits', async () => {
    const onBlocked = vi.fn()
    const older = await openStore('recording-tab')
    await older.putLibrary(exampleLibrary())
    const journal = await older.openJournal(exampleTake())
    const opening = openStore('recording-tab', { steps: [...SCHEMA_STEPS, laterStep], onBlocked })
    await vi.waitFor(() => expect(onBlocked).toHaveBeenCalledOnce(), { timeout: 15_000 })
    expect(onBlocked).toHaveBeenCalledWith(expect.stringContaining('another tab'))
    if (!journal.ok) throw new Error(journal.message)
    expect(await journal.value.append(exampleSamples(60))).toMatchObject({ ok: true })
    expect(await journal.value.finish(exampleTake())).toMatchObject({ ok: true })
    const newer = await opening
    expect(await newer.listRecordings('parade')).toHaveLength(1)
    newer.close()
  })
})
