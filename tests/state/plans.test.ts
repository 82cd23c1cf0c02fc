import { expect, it } from 'vitest'
import { freshPlan } from '../../src/state/collect'
import { freshName, openApp } from './app-bench'
import { open } from './collect-bench'

/** A library whose only plan asks for gestures that are gone, with another gesture since. */
async function openWithOldPlan() {
  const name = freshName()
  const { app } = await open(name)
  const collect = await app.openCollect()
  const old = freshPlan(app.library.current.value!)
  await collect.savePlan(old)
  for (const { id } of app.library.current.value!.gestures) await app.library.removeGesture(id)
  await app.library.addGesture('Pour')
  return { name, app, collect, old }
}

/** Gestures of each plan as a fresh start finds them. */
async function afterRestart(name: string) {
  const app = await openApp(name)
  return app.library.libraries.value.map(({ plans }) => plans?.map((one) => one.gestures.length))
}

it('a library is read again although a plan lost all its gestures and another one was written', async () => {
  const { name, app, collect } = await openWithOldPlan()
  expect((await collect.savePlan(freshPlan(app.library.current.value!))).ok).toBe(true)
  expect(collect.plans.value.map(({ gestures }) => gestures.length)).toEqual([0, 1])
  expect(await afterRestart(name)).toEqual([[2, 1]])
})

it('a plan that lost its gestures survives the deletion of another one, and its undo', async () => {
  const { name, app, collect, old } = await openWithOldPlan()
  const other = freshPlan(app.library.current.value!)
  await collect.savePlan(other)
  await collect.removePlan(other.id)
  expect(await afterRestart(name)).toEqual([[2]])
  await app.undoable.value.find(({ text }) => text === 'Plan deleted.')?.undo?.()
  await collect.removePlan(old.id)
  expect(await afterRestart(name)).toEqual([[1]])
  await app.undoable.value
    .filter(({ text }) => text === 'Plan deleted.')
    .at(-1)
    ?.undo?.()
  expect(await afterRestart(name)).toEqual([[1, 2]])
})

it('a plan without gestures is refused with what to do', async () => {
  const { collect, old } = await openWithOldPlan()
  expect(await collect.savePlan({ ...old, gestures: [] })).toMatchObject({
    ok: false,
    message: 'A plan needs at least one gesture: choose one.',
  })
})

it('a deleted plan comes back to its own library while another one is open', async () => {
  const { app, collect, old } = await openWithOldPlan()
  const own = app.library.current.value!.id
  await collect.removePlan(old.id)
  await app.library.create('Rehearsal')
  await app.undoable.value.find(({ text }) => text === 'Plan deleted.')?.undo?.()
  expect(app.library.current.value?.plans).toBeUndefined()
  const library = app.library.libraries.value.find(({ id }) => id === own)
  expect(library?.plans?.map(({ id }) => id)).toEqual([old.id])
})

it('a plan has the ranges of its library as they are now, and its library keeps them in one place', async () => {
  const { app } = await open(freshName())
  const collect = await app.openCollect()
  const { target } = app.library.current.value!
  await collect.savePlan(freshPlan(app.library.current.value!))
  const shown = () => collect.plans.value[0]!
  expect(shown().ranges).toEqual({ accel: target.accel, gyro: target.gyro })
  const accel = { fullScale: 2, nanoPerLsb: 61_000 }
  await app.library.update({ target: { ...target, accel } })
  expect(shown().ranges?.accel).toEqual(accel)
  await collect.savePlan({ ...shown(), restMs: 5000 })
  expect(app.library.current.value!.plans).toMatchObject([{ restMs: 5000 }])
  expect(app.library.current.value!.plans![0]).not.toHaveProperty('ranges')
})
