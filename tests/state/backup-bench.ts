import type { App } from '../../src/state/app'
import type { BackupState, OpenedBackup } from '../../src/state/backup'
import { newId } from '../../src/state/id'
import { openStore } from '../../src/storage/open-store'
import { exampleSamples, exampleTake } from '../storage/examples'
import { freshName, openApp } from './app-bench'

export const TAKES = 6

/** An app with one own library of two gestures, and its database's name. */
export async function withOwnLibrary(): Promise<{ app: App; name: string; backup: BackupState }> {
  const name = freshName()
  const app = await openApp(name)
  const library = await app.library.create('North lantern')
  const raise = await app.library.addGesture('Raise')
  if (!library.ok || !raise.ok) throw new Error('no library')
  const store = await openStore(name)
  const added = await store.addRecordings(
    Array.from({ length: TAKES }, (_, n) => ({
      recording: exampleTake({
        id: newId(),
        libraryId: library.value.id,
        gestureId: raise.value.id,
        testerCode: `T0${1 + (n % 2)}`,
      }),
      samples: exampleSamples(60, n),
    })),
  )
  if (!added.ok) throw new Error(added.message)
  store.close()
  await app.library.open(library.value.id)
  return { app, name, backup: await app.openBackup() }
}

export async function madeFile(backup: BackupState): Promise<File> {
  const made = await backup.make()
  if (!made.ok) throw new Error(made.message)
  await backup.handedOver(made.value)
  return new File([made.value.blob], made.value.fileName)
}

export async function opened(backup: BackupState, file: File): Promise<OpenedBackup> {
  const found = await backup.open(file)
  if (!found.ok) throw new Error(found.message)
  return found.value
}

export async function restored(backup: BackupState, file: File, wish: 'add' | 'beside' = 'add') {
  const found = await opened(backup, file)
  return backup.restore(found, await backup.plan(found, wish))
}
