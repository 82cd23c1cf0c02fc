import 'fake-indexeddb/auto'
import { expect, test } from 'vitest'
import type { App } from '../../src/state/app'
import { tinyLibrary } from '../shared/training/tiny-library'
import { clientHere, freshName, openApp } from './app-bench'

/** Waits until a job is no longer in a state: reading and writing take their own time. */
async function leaves(job: () => { state: string }, state: string): Promise<void> {
  while (job().state === state) await new Promise((resolve) => setTimeout(resolve, 20))
}

async function openTiny(name: string): Promise<App> {
  const app = await openApp(name)
  const file = await clientHere().writeLibrary(tinyLibrary())
  if (!file.ok) throw new Error(file.message)
  const added = await app.importLibrary(file.value)
  if (!added.ok) throw new Error(added.message)
  return app
}

test('a decision is kept with the library it came from, and stale once its takes change', async () => {
  const name = freshName()
  const app = await openTiny(name)
  await (await app.openDecide()).decideGestures()
  await new Promise((resolve) => setTimeout(resolve, 200))

  const again = await openApp(name)
  const { gestures } = await again.openDecide()
  await leaves(() => gestures.value, 'none')
  expect(gestures.value).toMatchObject({ state: 'done', stale: false })
  if (gestures.value.state !== 'done') throw new Error('it should be done')
  expect(gestures.value.value.pairs).toHaveLength(3)

  const [first] = again.library.recordings.value
  await again.library.removeRecordings([first?.id ?? ''])
  expect(gestures.value).toMatchObject({ state: 'done', stale: true })
})

test('a sweep for another tolerance is measured again, and another clock makes it stale', async () => {
  const app = await openTiny(freshName())
  const { sensor, decideSensor } = await app.openDecide()
  await decideSensor(0.05)
  expect(sensor.value).toMatchObject({ state: 'done', value: { tolerance: 0.05 } })
  const { target } = app.library.current.value!
  await app.library.update({ target: { ...target, clockHz: 16_000_000 } })
  expect(sensor.value).toMatchObject({ state: 'done', stale: true })
})

test('without takes the job fails with one sentence that says what to record', async () => {
  const app = await openApp()
  await app.library.create('Empty')
  const { data, decideData } = await app.openDecide()
  await decideData()
  expect(data.value).toMatchObject({ state: 'failed' })
  expect(data.value.state === 'failed' && data.value.message).toContain(
    'record some of each gesture',
  )
})
