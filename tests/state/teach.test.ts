import 'fake-indexeddb/auto'
import { expect, test } from 'vitest'
import type { SimulatedSource } from '../../src/sensors/simulated-source'
import type { App } from '../../src/state/app'
import { openApp } from './app-bench'

const ONE_MORE = { gestureId: null, name: 'The new gesture' }

async function demoApp(): Promise<App> {
  const app = await openApp()
  await app.library.addDemo()
  return app
}

const soon = () => new Promise((resolve) => setTimeout(resolve, 50))

async function until(what: () => boolean): Promise<void> {
  for (let i = 0; i < 800 && !what(); i++) await soon()
  if (!what()) throw new Error('it did not come to that')
}

test('three movements of the simulated phone go to the session; the cost is measured with them', async () => {
  const app = await demoApp()
  const teach = await app.openTeach()
  app.motion.use('simulated')
  const [gesture] = app.library.current.value!.gestures
  expect(await teach.start({ gestureId: gesture!.id, name: gesture!.name })).toMatchObject({
    ok: true,
  })
  const source = app.motion.source() as SimulatedSource
  const movement = source.movements().find(({ name }) => name === gesture!.name)!
  await new Promise((resolve) => setTimeout(resolve, 800))
  for (let count = 1; count <= 3; count++) {
    source.perform(movement.id)
    await until(() => teach.steps.value.length === count)
    await new Promise((resolve) => setTimeout(resolve, 500))
  }
  const last = teach.steps.value[2]!
  expect(['done', 'unlike', 'near']).toContain(last.answer.status)
  expect(teach.steps.value.every(({ counts }) => counts !== null && counts.length > 0)).toBe(true)
  await teach.measureCost()
  const cost = teach.cost.value
  if (cost.state !== 'done') throw new Error(JSON.stringify(cost))
  expect(cost.value.rounds).toBe(2)
  expect(cost.value.place?.name).toBe(gesture!.name)
  await teach.leave()
  expect(teach.running.value).toBe(false)
  expect(teach.steps.value).toEqual([])
}, 120_000)

test('without a sensor, and with a model that cannot be taught, it says what to do', async () => {
  const app = await demoApp()
  const teach = await app.openTeach()
  expect(await teach.start(ONE_MORE)).toMatchObject({ code: 'teach/sensor' })
  expect(teach.trouble.value).toContain('HTTPS')
  app.motion.use('simulated')
  const { training } = app.library.current.value!
  await app.library.update({ training: { ...training, matcher: 'kernel' } })
  expect(await teach.start(ONE_MORE)).toMatchObject({ code: 'teach/model' })
  expect(teach.trouble.value).toContain('choose Templates on Prop')
  expect(teach.running.value).toBe(false)
}, 120_000)
