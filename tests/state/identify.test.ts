import { expect, it } from 'vitest'
import { contentId } from '../../src/shared/collect/content-id'
import { createCollect } from '../../src/state/collect'
import { identify } from '../../src/state/collect/identify'
import { createNotices } from '../../src/state/notices'
import { createShelf } from '../../src/state/shelf'
import { openStore } from '../../src/storage/open-store'
import type { Store } from '../../src/storage/store'
import { exampleLibrary, exampleSamples, exampleTake } from '../storage/examples'
import { clientHere, freshName } from './app-bench'

const samples = exampleSamples(60)
const RENAMED = exampleLibrary({ name: 'South lantern' })
const RELABELLED = exampleTake({ note: 'with gloves', testerCode: 'B' })

/** A library with one take, and what another tab makes of it: both are named anew. */
async function edited() {
  const store = await openStore(freshName())
  await store.addFullLibrary({
    library: exampleLibrary(),
    recordings: [{ recording: exampleTake(), samples }],
  })
  const edit = async () => {
    await store.putLibrary(RENAMED)
    await store.updateRecording(RELABELLED)
  }
  return { store, edit }
}

async function facts(store: Store) {
  const { library, recordings } = (await store.loadFacts('parade'))!
  const [take] = recordings
  return { name: library.name, note: take?.note, tester: take?.testerCode, id: take?.contentId }
}

const known = { id: contentId(samples) }
const before = { name: 'Night parade', note: '', tester: 'A' }
const after = { name: 'South lantern', note: 'with gloves', tester: 'B' }

it('an edit between reading and writing is lost where all that was read is written back', async () => {
  const { store, edit } = await edited()
  const read = (await store.loadFacts('parade'))!
  await edit()
  const update = read.recordings.map((one) => ({ ...one, contentId: known.id }))
  const change = { library: read.library, add: [], update, remove: [], restore: [] }
  expect(await store.changeLibrary(change)).toMatchObject({ ok: true })
  expect(await facts(store)).toEqual({ ...before, ...known })
})

it('an edit in the very moment before contents are stored stays, here and in the answer', async () => {
  const { store, edit } = await edited()
  let edits = 0
  const meddled: Store = {
    ...store,
    noteContents: async (ids) => {
      edits += 1
      await edit()
      return store.noteContents(ids)
    },
  }
  const shelf = createShelf(meddled, createNotices())
  const found = await identify(shelf, clientHere(), 'parade')
  expect(edits).toBe(1)
  expect(await facts(store)).toEqual({ ...after, ...known })
  if (!found.ok) throw new Error(found.message)
  expect(found.value.library).toEqual(RENAMED)
  expect(found.value.own).toMatchObject([{ note: 'with gloves', contentId: known.id }])
})

it('a take that is deleted in that moment is passed over', async () => {
  const { store } = await edited()
  const meddled: Store = {
    ...store,
    noteContents: async (ids) => {
      await store.deleteRecordings([exampleTake().id])
      await store.purgeDeleted('9999-01-01T00:00:00Z')
      return store.noteContents(ids)
    },
  }
  const found = await identify(createShelf(meddled, createNotices()), clientHere(), 'parade')
  expect(found.ok && found.value.own).toEqual([])
})

it('an edit in the very moment before takes are dropped stays, and so it does through the undo', async () => {
  const { store, edit } = await edited()
  let edits = 0
  const meddled: Store = {
    ...store,
    planChange: async (id, plan) => {
      edits += 1
      if (edits === 1) await edit()
      return store.planChange(id, plan)
    },
  }
  const shelf = createShelf(meddled, createNotices())
  await shelf.reload()
  const collect = createCollect({ shelf, recogniser: clientHere() })
  await collect.drop([exampleTake().id])
  const { library, recordings } = (await store.loadFacts('parade'))!
  expect(recordings).toEqual([])
  expect(library).toMatchObject({ name: after.name, withdrawals: [{ key: known.id }] })
  await shelf.notices.undoable.value[0]?.undo?.()
  expect(await facts(store)).toEqual({ ...after, ...known })
})

it('an edit from a copy that knows no content yet does not forget it', async () => {
  const { store, edit } = await edited()
  await store.noteContents(new Map([[exampleTake().id, known.id]]))
  await edit()
  expect(await facts(store)).toEqual({ ...after, ...known })
})
