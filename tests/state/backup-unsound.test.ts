import { expect, test } from 'vitest'
import { readLibraryFile } from '../../src/shared/format/library-file'
import type { Library } from '../../src/shared/model/library'
import type { App } from '../../src/state/app'
import { openStore } from '../../src/storage/open-store'
import { openApp } from './app-bench'
import { madeFile, opened, restored, TAKES, withOwnLibrary } from './backup-bench'

/** Changes the open library past the app's own checks, as damage in storage would. */
async function damage(app: App, name: string, change: (library: Library) => Library) {
  const library = change(app.library.current.value!)
  const store = await openStore(name)
  await store.putLibrary(library)
  store.close()
  await app.library.open(library.id)
}

/** Two gestures under one id: no reader could tell their takes apart. */
const doubled = (library: Library): Library => ({
  ...library,
  gestures: [...library.gestures, ...library.gestures],
})
const withoutGestures = (library: Library): Library => ({ ...library, gestures: [] })

test('a library that cannot be written is named, and all others are backed up', async () => {
  const { app, name, backup } = await withOwnLibrary()
  await damage(app, name, doubled)
  await app.library.create('South lantern')
  await app.library.addGesture('Ring')
  const made = await backup.make()
  if (!made.ok) throw new Error(made.message)
  expect(made.value.leftOut).toEqual([
    {
      name: 'North lantern',
      why: 'library.json, library.gestures: two gestures have the same id.',
    },
  ])
  await backup.handedOver(made.value)
  expect((await backup.counts()).unsaved).toBe(TAKES)
  const found = await opened(backup, new File([made.value.blob], made.value.fileName))
  expect(found.contents.libraries.map(({ library }) => library.name)).toEqual(['South lantern'])
})

test('where no library can be written, the failure names them', async () => {
  const { app, name, backup } = await withOwnLibrary()
  await damage(app, name, doubled)
  expect(await backup.make()).toMatchObject({
    ok: false,
    code: 'backup/nothing',
    message:
      'No library could be backed up. North lantern: library.json, library.gestures: two gestures have the same id.',
  })
  const exported = await app.exportLibrary()
  expect(exported.ok ? '' : exported.message).not.toMatch(/export it again/)
})

test('takes whose gesture is missing are backed up under a stand-in, and come back under it', async () => {
  const { app, name, backup } = await withOwnLibrary()
  await damage(app, name, withoutGestures)
  const file = await madeFile(backup)
  expect(await backup.counts()).toEqual({ libraries: 1, recordings: TAKES, unsaved: 0 })
  const other = await openApp()
  expect(await restored(await other.openBackup(), file)).toEqual({ ok: true, value: TAKES })
  expect(other.library.current.value?.gestures).toMatchObject([{ name: 'Gesture without a name' }])
  expect(other.library.recordings.value).toEqual(app.library.recordings.value)
  await restored(backup, file)
  expect(app.library.current.value?.gestures).toMatchObject([{ name: 'Gesture without a name' }])
})

test('an exported library file holds takes whose gesture is missing too', async () => {
  const { app, name } = await withOwnLibrary()
  await damage(app, name, withoutGestures)
  const file = await app.exportLibrary()
  if (!file.ok) throw new Error(file.message)
  const read = readLibraryFile(file.value.bytes)
  expect(read.ok && read.value.recordings.length).toBe(TAKES)
  expect(read.ok && read.value.library.gestures.map((one) => one.name)).toEqual([
    'Gesture without a name',
  ])
})
