import 'fake-indexeddb/auto'
import { expect, test, vi } from 'vitest'
import { ok } from '../../src/shared/model/result'
import type { Job } from '../../src/state/app'
import { createJobSlot } from '../../src/state/jobs'
import { keepResults } from '../../src/state/kept-results'
import { openStore } from '../../src/storage/open-store'
import type { Store } from '../../src/storage/store'
import { freshName, openApp } from './app-bench'

const isText = (value: unknown): value is string => typeof value === 'string'

function slotOver(store: Store, { basis = 'takes 1', core = 'core 1' } = {}) {
  let runs = 0
  const slot = createJobSlot<string>({
    owner: () => 'parade',
    basis: () => basis,
    work: async (variant) => {
      runs += 1
      return ok(`measured ${variant}`)
    },
    keeper: keepResults({ store, core, name: 'length', loadCheck: async () => isText }),
  })
  return { ...slot, runs: () => runs }
}

/** Lets reading come to its end where nothing is to be seen of it. */
const settle = () => new Promise((resolve) => setTimeout(resolve, 50))
/** Waits until a result is in the store, which is after it is shown. */
const kept = (store: Store, libraryId = 'parade') =>
  expect.poll(() => store.listItems('results', libraryId)).toHaveLength(1)
/** Waits until the slot has read what is kept. */
const read = (job: { value: Job<unknown> }) =>
  vi.waitUntil(() => job.value.state !== 'none', { timeout: 15_000 })

test('the last result is there again after a reload, with its time, and is not measured again', async () => {
  const store = await openStore(freshName())
  await slotOver(store).run('by tester')
  await kept(store)
  const after = slotOver(store)
  expect(after.job.value).toEqual({ state: 'none' })
  await read(after.job)
  expect(after.job.value).toMatchObject({
    state: 'done',
    value: 'measured by tester',
    stale: false,
  })
  if (after.job.value.state !== 'done') throw new Error('it should be done')
  expect(Date.now() - Date.parse(after.job.value.at ?? '')).toBeLessThan(60_000)
  expect(await slotOver(store).run('by tester')).toEqual(ok('measured by tester'))
  expect(after.runs()).toBe(0)
})

test.each([
  ['of other takes', { basis: 'takes 2' }, undefined],
  ['of another core or other code around it', { core: 'core 2' }, true],
])(
  'a result %s is shown as stale with why, and measured again when asked for',
  async (_, changed, byOther) => {
    const store = await openStore(freshName())
    await slotOver(store).run()
    await kept(store)
    const { job, run, runs } = slotOver(store, changed)
    expect(job.value).toEqual({ state: 'none' })
    await read(job)
    if (job.value.state !== 'done') throw new Error('it should be done')
    expect([job.value.stale, job.value.byOther]).toEqual([true, byOther])
    await run()
    expect(runs()).toBe(1)
    expect(job.value).toMatchObject({ state: 'done', stale: false })
    expect(job.value.byOther).toBeUndefined()
  },
)

test('what is damaged in storage is not shown, and measured when it is asked for', async () => {
  const store = await openStore(freshName())
  const keptAt = '2026-11-25T12:00:00.000Z'
  for (const value of [null, 5, {}, { core: 'core 1', basis: 'takes 1', variant: '', value: 5 }]) {
    await store.putItem('results', { id: 'parade length', libraryId: 'parade', keptAt, value })
    const { job, run } = slotOver(store)
    expect(job.value).toEqual({ state: 'none' })
    await settle()
    expect(job.value).toEqual({ state: 'none' })
    expect(await run()).toEqual(ok('measured '))
  }
})

test('where storage fails the result is shown all the same, and lost with the page alone', async () => {
  const store = await openStore(freshName())
  store.close()
  const { job, run } = slotOver(store)
  expect(job.value).toEqual({ state: 'none' })
  expect(await run('by tester')).toEqual(ok('measured by tester'))
  expect(job.value).toMatchObject({ state: 'done', value: 'measured by tester' })
  await settle()
})

test('an evaluation of the app outlives the page and turns stale with the next take', async () => {
  const name = freshName()
  const app = await openApp(name)
  await app.library.addDemo()
  await app.evaluate('tester')
  const before = app.evaluation.value
  if (before.state !== 'done') throw new Error('it should be done')
  await kept(await openStore(name), app.library.current.value!.id)

  const again = await openApp(name)
  expect(again.evaluation.value).toEqual({ state: 'none' })
  await expect.poll(() => again.evaluation.value, { timeout: 15_000 }).toEqual(before)
  await again.library.removeRecordings([again.library.recordings.value[0]!.id])
  expect(again.evaluation.value).toMatchObject({ state: 'done', stale: true })
})
