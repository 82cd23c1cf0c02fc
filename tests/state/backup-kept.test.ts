import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { repositoryPath } from '../../src/build/paths'
import { readLibraryFile } from '../../src/shared/format/library-file'
import type { FullLibrary } from '../../src/shared/model/library'
import { openStore } from '../../src/storage/open-store'
import { COLLECTED_ITEMS } from '../shared/backup/collected-items'
import { renamed } from '../shared/backup/example-backup'
import { collectedLibrary } from '../shared/format/collected-library'
import { freshName, openApp } from './app-bench'
import { restored } from './backup-bench'

/** As a database has it, which tells a recording's length by its samples, and lists by id. */
function asStored({ library, recordings }: FullLibrary): FullLibrary {
  const stored = recordings.map(({ recording, samples }) => {
    return { recording: { ...recording, durationMs: samples.tMs.at(-1)! }, samples }
  })
  return { library, recordings: stored.sort((a, b) => (a.recording.id < b.recording.id ? -1 : 1)) }
}

/** Restores a kept file on an empty phone. @returns the phone's database as it is then */
async function phoneWith(path: string) {
  const bytes = readFileSync(repositoryPath(path))
  const name = freshName()
  const app = await openApp(name)
  const file = new File([bytes], path.split('/').at(-1)!)
  const done = await restored(await app.openBackup(), file)
  if (!done.ok) throw new Error(done.message)
  const store = await openStore(name)
  const libraries = await store.listLibraries()
  const fulls = await Promise.all(libraries.map(({ id }) => store.loadFull(id)))
  return { bytes, store, fulls: fulls.map((full) => asStored(full!)), app }
}

test.each([1, 2, 3])(
  'a library file of version %i comes whole into the database',
  async (version) => {
    const { bytes, store, fulls } = await phoneWith(`tests/shared/format/library-${version}.zip`)
    const read = readLibraryFile(new Uint8Array(bytes))
    expect(fulls).toEqual(read.ok ? [asStored(read.value)] : [])
    expect((await store.facts()).unreadableItems).toBe(0)
    store.close()
  },
)

test('a backup of version 1 comes whole into the database', async () => {
  const { store, fulls } = await phoneWith('tests/shared/backup/backup-1.zip')
  expect(fulls).toEqual([
    asStored(renamed('north', 'North lantern')),
    asStored(renamed('south', 'South lantern')),
  ])
  store.close()
})

test('of a backup of version 1 with all there may be, session and model go on', async () => {
  const { store, fulls, app } = await phoneWith('tests/shared/backup/backup-1-collected.zip')
  expect(fulls).toEqual([asStored(collectedLibrary())])
  const [model, session] = COLLECTED_ITEMS
  const models = await app.openModels()
  await expect.poll(() => models.models.value?.map(({ id }) => id)).toEqual([model!.id])
  const sessions = await app.openSessions()
  await sessions.read()
  expect(sessions.runs.value.map(({ id }) => id)).toEqual([session!.id])
  store.close()
})
