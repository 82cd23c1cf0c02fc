import { describe, expect, it } from 'vitest'
import type { SessionFile } from '../../src/shared/collect/session'
import { writeSessionFile } from '../../src/shared/collect/session-file'
import type { App } from '../../src/state/app'
import { freshPlan } from '../../src/state/collect'
import { sampleSessionFile } from '../shared/collect/samples'
import { openApp } from './app-bench'
import { asFile, bringHome, open, takes } from './collect-bench'

describe('bringing a session home', () => {
  it('stores nothing before it is agreed to, then all of it, and undo takes it back', async () => {
    const { app, session } = await open()
    const collect = await app.openCollect()
    expect((await collect.bring([asFile(session)])).ok).toBe(true)
    const { bringing } = collect
    expect(bringing.value.state === 'report' && bringing.value.report.merge.added.length).toBe(7)
    expect(takes(app)).toEqual([])
    expect((await collect.agree()).ok).toBe(true)
    expect(takes(app)).toHaveLength(7)
    expect(app.library.current.value?.sessions).toHaveLength(1)
    await app.undoable.value[0]?.undo?.()
    expect(takes(app)).toEqual([])
    expect(app.library.current.value?.sessions).toBeUndefined()
  })

  it('twice and after a label was edited doubles nothing and keeps the edit', async () => {
    const { app, session } = await open()
    const collect = await bringHome(app, session)
    const [take] = takes(app).filter((one) => one.kind === 'take')
    const other = app.library.current.value!.gestures.find(({ id }) => id !== take?.gestureId)!
    await app.library.relabel(take!.id, other.id)
    await collect.bring([asFile(session), asFile(session, 'the same by another way.zip')])
    const { bringing } = collect
    const merge = bringing.value.state === 'report' ? bringing.value.report.merge : null
    expect([merge?.added, merge?.knownCount, merge?.conflicts]).toEqual([[], 7, []])
    await collect.agree()
    expect(takes(app)).toHaveLength(7)
    expect(takes(app).find(({ id }) => id === take!.id)).toMatchObject({ gestureId: other.id })
  })

  it('tells a file that is empty, damaged or foreign, and reads the others', async () => {
    const { app, session } = await open()
    const collect = await app.openCollect()
    const whole = writeSessionFile(session)
    await collect.bring([
      { name: 'empty.zip', bytes: async () => new Uint8Array(0) },
      { name: 'cut.zip', bytes: async () => whole.slice(0, 900) },
      { name: 'notes.txt', bytes: async () => new TextEncoder().encode('hello') },
      asFile(session, 'good.zip'),
    ])
    const { bringing } = collect
    const report = bringing.value.state === 'report' ? bringing.value.report : null
    expect(report?.files.map(({ wrong }) => wrong?.slice(0, 25) ?? null)).toEqual([
      'The file is empty (0 byte',
      'This is not a ZIP file, o',
      'This is not a ZIP file, o',
      null,
    ])
    expect(report?.merge.added).toHaveLength(7)
  })

  it('adds a gesture that the library has not, or takes it for one it has', async () => {
    const { app, session } = await open()
    const [raise] = app.library.current.value!.gestures
    const pour = { ...session.session.gestures[1]!, id: 'pour', name: 'Pour' }
    const foreign: SessionFile = {
      session: { ...session.session, gestures: [session.session.gestures[0]!, pour] },
      recordings: session.recordings.map(({ recording, samples }) => ({
        recording:
          recording.kind === 'take' && recording.gestureId !== raise!.id
            ? { ...recording, gestureId: 'pour' }
            : recording,
        samples,
      })),
    }
    const collect = await app.openCollect()
    await collect.bring([asFile(foreign)])
    const { bringing } = collect
    const report = bringing.value.state === 'report' ? bringing.value.report : null
    expect(report?.strangers).toEqual([{ id: 'pour', name: 'Pour', takes: 3, to: null }])
    await collect.agree()
    expect(app.library.current.value!.gestures.map(({ name }) => name)).toEqual([
      'Raise',
      'Ring',
      'Pour',
    ])
    await app.undoable.value[0]?.undo?.()
    expect(app.library.current.value!.gestures).toHaveLength(2)
    await collect.bring([asFile(foreign)])
    collect.mapGesture('pour', raise!.id)
    await collect.agree()
    const gestures = takes(app).flatMap((one) => (one.kind === 'take' ? [one.gestureId] : []))
    expect(new Set(gestures)).toEqual(new Set([raise!.id]))
  })
})

describe('a tester who withdraws', () => {
  it('is gone with session and takes, stays out when the file comes again, and can be undone', async () => {
    const { app, session } = await open()
    const collect = await bringHome(app, session)
    await collect.withdraw(session.session.testerCode)
    expect(takes(app)).toEqual([])
    expect(app.library.current.value?.sessions).toEqual([])
    await collect.bring([asFile(session)])
    const { bringing } = collect
    const merge = bringing.value.state === 'report' ? bringing.value.report.merge : null
    expect(merge?.keptOut).toEqual({ withdrawn: 7, dropped: 0 })
    collect.forget()
    await app.undoable.value[0]?.undo?.()
    expect(takes(app)).toHaveLength(7)
    expect(app.library.current.value?.withdrawals).toEqual([])
  })
})

it('a dropped take does not come back with its session', async () => {
  const { app, session } = await open()
  const collect = await bringHome(app, session)
  await collect.drop([takes(app)[0]!.id])
  await collect.bring([asFile(session)])
  await collect.agree()
  expect(takes(app)).toHaveLength(6)
})

it('a plan is stored with its library, and its deletion can be undone', async () => {
  const { app } = await open()
  const collect = await app.openCollect()
  const plan = freshPlan(app.library.current.value!)
  await collect.savePlan(plan)
  await collect.savePlan({ ...plan, order: 'blocked' })
  expect(app.library.current.value?.plans).toEqual([{ ...plan, order: 'blocked' }])
  await collect.removePlan(plan.id)
  expect(collect.plans.value).toEqual([])
  await app.undoable.value[0]?.undo?.()
  expect(collect.plans.value).toHaveLength(1)
})

it('a take deleted where it is listed does not come back with its session either', async () => {
  const { app, session } = await open()
  const collect = await bringHome(app, session)
  await app.library.removeRecordings([takes(app)[0]!.id])
  await collect.bring([asFile(session)])
  await collect.agree()
  expect(takes(app)).toHaveLength(6)
  await app.undoable.value.find(({ text }) => text === 'Recording deleted.')?.undo?.()
  expect(takes(app)).toHaveLength(7)
  expect(app.library.current.value?.withdrawals).toEqual([])
})

it('labels changed on two desks are put to the person, and nothing is stored undecided', async () => {
  const { app, session } = await open()
  const collect = await bringHome(app, session)
  const other = await open()
  await bringHome(other.app, session)
  const names = (one: App) => one.library.current.value!.gestures
  await app.library.addGesture('Pour')
  const [id, pour] = [session.recordings[0]!.samples.tMs.length, names(app)[2]!]
  const firstOf = (one: App) => takes(one).find(({ sampleCount }) => sampleCount === id)!
  await app.library.relabel(firstOf(app).id, pour.id)
  await other.app.library.relabel(firstOf(other.app).id, names(other.app)[1]!.id)
  const exported = await other.app.exportLibrary()
  if (!exported.ok) throw new Error(exported.message)
  const { bytes } = exported.value
  await collect.bring([{ name: 'other desk.zip', bytes: async () => bytes }])
  const report = () => {
    const { value } = collect.bringing
    if (value.state !== 'report') throw new Error(value.state)
    return value.report
  }
  expect(report().strangers).toEqual([])
  expect(report().merge.conflicts.map(({ field }) => field)).toEqual(['gestureId'])
  expect(report().merge.conflicts[0]?.choices[0]?.value).toBe(pour.id)
  expect(await collect.agree()).toMatchObject({ ok: false, code: 'collect/not-decided' })
  collect.decideAll('there')
  expect((await collect.agree()).ok).toBe(true)
  expect(firstOf(app)).toMatchObject({ gestureId: names(app)[1]!.id })
  await collect.bring([{ name: 'other desk.zip', bytes: async () => bytes }])
  expect(report().merge.conflicts).toEqual([])
})

it('without any library, says so instead of a report', async () => {
  const app = await openApp()
  const collect = await app.openCollect()
  await collect.bring([asFile(sampleSessionFile(1))])
  expect(collect.bringing.value).toEqual({
    state: 'failed',
    message: 'There is no library open; open or create one first.',
  })
})

it('files chosen while others are read take their place', async () => {
  const { app, session } = await open()
  const collect = await app.openCollect()
  const slow = collect.bring([asFile(session), asFile(session), asFile(session)])
  const quick = collect.bring([{ name: 'empty.zip', bytes: async () => new Uint8Array(0) }])
  await Promise.all([slow, quick])
  const { value } = collect.bringing
  expect(value.state === 'report' && value.report.files.map(({ name }) => name)).toEqual([
    'empty.zip',
  ])
})

it('a plan follows the names of its library, and loses gestures that are gone', async () => {
  const { app } = await open()
  const collect = await app.openCollect()
  const [raise, ring] = app.library.current.value!.gestures
  await collect.savePlan(freshPlan(app.library.current.value!))
  await app.library.renameGesture(raise!.id, 'Lift')
  await app.library.removeGesture(ring!.id)
  expect(collect.plans.value[0]?.gestures.map(({ name }) => name)).toEqual(['Lift'])
})
