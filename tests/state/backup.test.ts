import { expect, test, vi } from 'vitest'
import { readLibraryFile } from '../../src/shared/format/library-file'
import { contentsSentence } from '../../src/shared/words/en/backup-words'
import { openStore } from '../../src/storage/open-store'
import { freshName, openApp } from './app-bench'
import { madeFile, opened, restored, TAKES, withOwnLibrary } from './backup-bench'

test('a backup comes back on an empty phone as it was, ids and all', async () => {
  const { app, backup } = await withOwnLibrary()
  const file = await madeFile(backup)
  const other = await openApp()
  expect(await restored(await other.openBackup(), file)).toEqual({ ok: true, value: TAKES })
  expect(other.library.libraries.value).toEqual(app.library.libraries.value)
  expect(other.library.recordings.value).toEqual(app.library.recordings.value)
  expect(other.unsaved.value).toBe(0)
})

test('kept items come back with their library', async () => {
  const { app, name, backup } = await withOwnLibrary()
  const libraryId = app.library.current.value!.id
  const store = await openStore(name)
  const item = {
    id: 'm1',
    libraryId,
    keptAt: '2026-11-25T16:00:00Z',
    value: { bytes: Uint8Array.of(7, 8) },
  }
  await store.putItem('models', item)
  const file = await madeFile(backup)
  const otherName = freshName()
  const other = await openApp(otherName)
  await restored(await other.openBackup(), file)
  const there = await openStore(otherName)
  expect(await there.listItems('models', libraryId)).toEqual([item])
  there.close()
  store.close()
})

test('what is here stays as it is; what is missing or deleted comes back', async () => {
  const { app, name, backup } = await withOwnLibrary()
  const file = await madeFile(backup)
  const [first, second, third] = app.library.recordings.value
  await app.library.updateFacts(third!.id, { note: 'changed since' })
  await app.library.rename('South lantern')
  await app.library.removeRecordings([first!.id, second!.id])
  // One is gone for good, one can still be undone.
  const store = await openStore(name)
  await store.restoreRecordings([second!.id])
  await store.purgeDeleted('9999-01-01T00:00:00Z')
  await store.deleteRecordings([second!.id])
  store.close()
  await app.library.open(app.library.current.value!.id)

  const found = await opened(backup, file)
  const [planned] = await backup.plan(found, 'add')
  expect(planned?.way).toEqual({
    kind: 'add',
    missing: [first!.id],
    undelete: [second!.id],
    gestures: 0,
  })
  expect(await backup.restore(found, [planned!])).toEqual({ ok: true, value: 2 })
  const ids = app.library.recordings.value.map(({ id }) => id)
  expect(ids).toHaveLength(TAKES)
  expect(app.library.current.value?.name).toBe('South lantern')
  expect(app.library.recordings.value.find(({ id }) => id === third!.id)?.note).toBe(
    'changed since',
  )
  expect((await backup.plan(found, 'add'))[0]?.way).toEqual({ kind: 'nothing' })
})

test('put beside, it is a second library under a free name', async () => {
  const { app, backup } = await withOwnLibrary()
  const file = await madeFile(backup)
  expect(await restored(backup, file, 'beside')).toEqual({ ok: true, value: TAKES })
  expect(app.library.libraries.value.map(({ name }) => name).sort()).toEqual([
    'North lantern',
    'North lantern 2',
  ])
})

test('a deleted library comes back', async () => {
  const { app, backup } = await withOwnLibrary()
  const file = await madeFile(backup)
  await app.library.removeLibrary(app.library.current.value!.id)
  expect(app.library.libraries.value).toEqual([])
  await restored(backup, file)
  expect(app.library.libraries.value.map(({ name }) => name)).toEqual(['North lantern'])
  expect(app.library.recordings.value).toHaveLength(TAKES)
})

test('what was withdrawn since does not come back, beside neither', async () => {
  const { app, name, backup } = await withOwnLibrary()
  const file = await madeFile(backup)
  const [gone] = app.library.recordings.value
  const store = await openStore(name)
  const samples = await store.loadSamples(gone!.id)
  const { contentId } = await import('../../src/shared/collect/content-id')
  const key = contentId(samples!)
  const library = app.library.current.value!
  await store.putLibrary({
    ...library,
    withdrawals: [
      { kind: 'content', key, why: 'dropped', testerCode: 'T01', at: '2026-11-25T16:00:00Z' },
    ],
  })
  await store.deleteRecordings([gone!.id])
  await store.purgeDeleted('9999-01-01T00:00:00Z')
  store.close()
  await app.library.open(library.id)
  expect(await restored(backup, file)).toEqual({ ok: true, value: 0 })
  expect(app.library.recordings.value).toHaveLength(TAKES - 1)
  expect(await restored(backup, file, 'beside')).toEqual({ ok: true, value: TAKES - 1 })
})

test('of a damaged backup every whole take is restored and the rest is named', async () => {
  const { backup } = await withOwnLibrary()
  const file = await madeFile(backup)
  const bytes = new Uint8Array(await file.arrayBuffer())
  const found = await opened(backup, file)
  const { start, end } = found.contents.libraries[0]!.place.library
  bytes.fill(0, start + Math.round((end - start) * 0.55), start + Math.round((end - start) * 0.6))
  const other = await openApp()
  const there = await other.openBackup()
  const damaged = await opened(there, new File([bytes], file.name))
  const lost = damaged.contents.libraries[0]!.lost
  expect(lost.length).toBeGreaterThan(0)
  expect(lost[0]).toMatchObject({ gesture: 'Raise', tester: expect.stringMatching(/^T0[12]$/) })
  await there.restore(damaged, await there.plan(damaged, 'add'))
  expect(other.library.recordings.value).toHaveLength(TAKES - lost.length)
})

test('a backup whose manifest is damaged is still called one, a library file is not', async () => {
  const { app, backup } = await withOwnLibrary()
  const file = await madeFile(backup)
  const bytes = new Uint8Array(await file.arrayBuffer())
  bytes.fill(0, 80, 120)
  const { contents } = await opened(backup, new File([bytes], file.name))
  expect(contents.libraries.map(({ recordings }) => recordings.length)).toEqual([TAKES])
  expect(contentsSentence(contents)).toMatch(
    /^A backup whose date and list of libraries are damaged/,
  )
  const exported = await app.exportLibrary()
  if (!exported.ok) throw new Error(exported.message)
  const alone = new File([exported.value.bytes as Uint8Array<ArrayBuffer>], 'library.zip')
  expect(contentsSentence((await opened(backup, alone)).contents)).toBe('A library file, whole.')
})

test('what no file holds is counted until it is handed over', async () => {
  const { app, backup } = await withOwnLibrary()
  expect(app.unsaved.value).toBe(TAKES)
  expect(await backup.counts()).toEqual({ libraries: 1, recordings: TAKES, unsaved: TAKES })
  const made = await backup.make()
  expect(app.unsaved.value).toBe(TAKES)
  if (made.ok) await backup.handedOver(made.value)
  expect(app.unsaved.value).toBe(0)
})

test('an exported library file counts as saved when it was handed over, an imported one at once', async () => {
  const { app } = await withOwnLibrary()
  const file = await app.exportLibrary()
  if (!file.ok) throw new Error(file.message)
  expect(readLibraryFile(file.value.bytes).ok).toBe(true)
  expect(app.unsaved.value).toBe(TAKES)
  await file.value.handedOver()
  expect(app.unsaved.value).toBe(0)
  const other = await openApp()
  await other.importLibrary(file.value.bytes)
  expect(other.library.recordings.value).toHaveLength(TAKES)
  expect(other.unsaved.value).toBe(0)
})

test('one for which the storage cannot be read has failed and says why', async () => {
  const { backup } = await withOwnLibrary()
  const read = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(() => {
    throw new DOMException('The disk is gone.', 'UnknownError')
  })
  const made = await backup.make()
  read.mockRestore()
  expect(made).toMatchObject({ ok: false, code: 'storage/failed' })
  expect(backup.making.value).toMatchObject({ state: 'failed' })
  expect(await backup.make()).toMatchObject({ ok: true })
})
