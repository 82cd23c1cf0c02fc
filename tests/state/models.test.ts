import 'fake-indexeddb/auto'
import { expect, test } from 'vitest'
import { itemsFromBytes, itemsToBytes } from '../../src/shared/backup/kept-items'
import { MOST_KEPT } from '../../src/shared/compare/kept-model'
import { keptModelOf } from '../../src/shared/format/kept-model-schema'
import type { App } from '../../src/state/app'
import { readModels } from '../../src/state/kept-models'
import { compareModels, type KeptEntry, type ModelsState } from '../../src/state/models'
import { openStore } from '../../src/storage/open-store'
import { freshName, openApp } from './app-bench'

/** Resolves with the models as soon as they are as wanted. */
async function modelsThat(state: ModelsState, wanted: (models: KeptEntry[]) => boolean) {
  for (let i = 0; i < 400; i++) {
    const models = state.models.value
    if (models !== null && wanted(models)) return models
    await new Promise((resolve) => setTimeout(resolve, 25))
  }
  throw new Error('the models did not come to what was wanted')
}

const measured = (count: number) => (models: KeptEntry[]) =>
  models.filter(({ model }) => model.evaluations.tester !== undefined).length === count

async function demoApp(name: string): Promise<App> {
  const app = await openApp(name)
  await app.library.addDemo()
  return app
}

test('a measured model is kept, and the next is compared with it on the same takes', async () => {
  const name = freshName()
  const app = await demoApp(name)
  const state = await app.openModels()
  await app.evaluate('tester')
  const [first] = await modelsThat(state, measured(1))
  const trained = await app.train()
  if (!trained.ok || first === undefined) throw new Error('it should be trained and kept')
  expect(first.model.hash).toBe(trained.value.hash)
  expect(first.model.takes).toHaveLength(app.library.recordings.value.length)

  const [dropped] = app.library.recordings.value
  await app.library.removeRecordings([dropped!.id])
  const { training } = app.library.current.value!
  await app.library.update({ training: { ...training, length: 12 } })
  await app.evaluate('tester')
  const [second, again] = await modelsThat(state, measured(2))
  expect(again?.id).toBe(first.id)
  const compared = compareModels(again!.model, second!.model, 'tester')
  if (!compared.ok) throw new Error(compared.message)
  const tester = dropped?.testerCode
  expect(compared.value.changes).toEqual([`1 take fewer by ${tester}`, 'points 21 → 12'])
  const { comparison } = compared.value
  expect(comparison.first.n).toBe(first.model.takes.length - 1)
  expect(comparison.notCompared.onlyInFirst).toBe(1)
  expect(comparison.flips).toHaveLength(comparison.onlyFirst + comparison.onlySecond)
  expect(compareModels(first.model, second!.model, 'take')).toMatchObject({
    code: 'compare/not-measured',
  })

  // They outlive the page.
  const later = await (await openApp(name)).openModels()
  expect(await modelsThat(later, measured(2))).toEqual([second, again])
}, 60_000)

test('a model with another threshold factor has the figures of that factor, and can be compared', async () => {
  const name = freshName()
  const app = await demoApp(name)
  const state = await app.openModels()
  await app.evaluate('tester')
  await modelsThat(state, measured(1))
  const { training } = app.library.current.value!
  await app.library.update({ training: { ...training, thresholdFactor: 0.5 } })
  await app.train()
  const [strict, first] = await modelsThat(state, measured(2))
  const shown = app.evaluation.value
  if (shown.state !== 'done') throw new Error('it should be measured')
  expect(shown.stale).toBe(false)
  expect(strict!.model.evaluations.tester).toEqual(shown.value)
  expect(strict!.model.evaluations.tester!.thresholdFactor).toBe(0.5)
  expect(first!.model.evaluations.tester!.thresholdFactor).toBe(training.thresholdFactor)
  const compared = compareModels(first!.model, strict!.model, 'tester')
  expect(compared).toMatchObject({ ok: true })

  // After a reload the kept figures do as well.
  const later = await openApp(name)
  const models = await later.openModels()
  await later.library.update({ training: { ...training, thresholdFactor: 1.7 } })
  await later.train()
  const [loose] = await modelsThat(models, measured(3))
  expect(loose!.model.evaluations.tester!.thresholdFactor).toBe(1.7)
}, 60_000)

test('the same library trained twice is one model; pinned ones stay when the oldest go', async () => {
  const name = freshName()
  const app = await demoApp(name)
  const state = await app.openModels()
  await app.train()
  const [first] = await modelsThat(state, (models) => models.length === 1)
  await state.pin(first!.id, true)
  const store = await openStore(name)
  const libraryId = app.library.current.value!.id
  for (let i = 0; i < MOST_KEPT + 2; i++) {
    const libraryHash = i.toString(16).padStart(64, '0')
    const keptAt = new Date(Date.UTC(2026, 0, 1 + i)).toISOString()
    const value = { ...first!.model, libraryHash }
    await store.putItem('models', { id: `old ${i}`, libraryId, keptAt, value })
  }
  const { training } = app.library.current.value!
  await app.library.update({ training: { ...training, length: 12 } })
  await app.train()
  const models = await modelsThat(state, (found) => found.length === MOST_KEPT + 1)
  expect(models.map(({ id }) => id)).toContain(first!.id)
  expect(models.map(({ id }) => id)).not.toContain('old 0')
  await state.remove(first!.id)
  expect(state.models.value).toHaveLength(MOST_KEPT)
  await app.undoable.value[0]?.undo?.()
  expect(state.models.value?.map(({ id }) => id)).toContain(first!.id)
}, 60_000)

test('a damaged model is left out; one that went through a backup is whole', async () => {
  const name = freshName()
  const app = await demoApp(name)
  const state = await app.openModels()
  await app.evaluate('tester')
  const [kept] = await modelsThat(state, measured(1))
  const { model } = kept!
  const none = model.evaluations.tester!
  none.scores[0]!.precision = { ...none.scores[0]!.precision, n: 0, hits: 0, value: Number.NaN }
  const item = { kind: 'models' as const, id: 'a', keptAt: kept!.keptAt, value: model }
  const [back] = itemsFromBytes(itemsToBytes([item])) ?? []
  expect(keptModelOf(back?.value)).toEqual(model)

  const altered = model.bytes.slice()
  altered[80]! ^= 1
  const store = await openStore(name)
  const libraryId = app.library.current.value!.id
  for (const value of [null, {}, { ...model, bytes: altered }, { ...model, takes: 5 }]) {
    await store.putItem('models', { ...kept!, libraryId, value })
    expect(await readModels(store, libraryId)).toEqual([])
  }
}, 60_000)
