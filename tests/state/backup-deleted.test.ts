import { expect, test } from 'vitest'
import { openStore } from '../../src/storage/open-store'
import { madeFile, opened, restored, TAKES, withOwnLibrary } from './backup-bench'

test('over a deleted library an older backup brings back no takes of who withdrew since', async () => {
  const { app, backup } = await withOwnLibrary()
  const file = await madeFile(backup)
  await (await app.openCollect()).withdraw('T01')
  const { id, withdrawals } = app.library.current.value!
  expect(withdrawals).toHaveLength(TAKES / 2)
  await app.library.removeLibrary(id)
  const found = await opened(backup, file)
  const [planned] = await backup.plan(found, 'add')
  expect(planned).toMatchObject({
    way: { kind: 'add', missing: [], undelete: [], gestures: 0 },
    withheld: TAKES / 2,
  })
  expect(await backup.restore(found, [planned!])).toEqual({ ok: true, value: 0 })
  await app.library.open(id)
  expect(app.library.recordings.value.map(({ testerCode }) => testerCode)).toEqual(
    Array.from({ length: TAKES / 2 }, () => 'T02'),
  )
  expect(app.library.current.value?.withdrawals).toEqual(withdrawals)
  expect(await restored(backup, file, 'beside')).toEqual({ ok: true, value: TAKES / 2 })
})

test('a take that was dropped and can still be undone does not come back, deleted library or not', async () => {
  const { app, backup } = await withOwnLibrary()
  const file = await madeFile(backup)
  const dropped = app.library.recordings.value[0]!.id
  await (await app.openCollect()).drop([dropped])
  expect(await restored(backup, file)).toEqual({ ok: true, value: 0 })
  expect(app.library.recordings.value).toHaveLength(TAKES - 1)
  await app.library.removeLibrary(app.library.current.value!.id)
  expect(await restored(backup, file)).toEqual({ ok: true, value: 0 })
  expect(app.library.recordings.value).toHaveLength(TAKES - 1)
})

test('over a deleted library, gestures and names given since stay, and it can be backed up again', async () => {
  const { app, name, backup } = await withOwnLibrary()
  const file = await madeFile(backup)
  const ring = await app.library.addGesture('Ring')
  await app.library.rename('South lantern')
  const { id } = app.library.current.value!
  const take = app.library.recordings.value[0]!
  await app.library.relabel(take.id, ring.ok ? ring.value.id : '')
  await app.library.removeLibrary(id)
  await restored(backup, file)
  const library = app.library.current.value!
  expect(library.name).toBe('South lantern')
  expect(library.gestures.map((one) => one.name)).toEqual(['Raise', 'Ring'])
  const store = await openStore(name)
  expect((await store.loadFull(id))?.recordings).toHaveLength(TAKES)
  store.close()
  expect((await backup.make()).ok).toBe(true)
})
