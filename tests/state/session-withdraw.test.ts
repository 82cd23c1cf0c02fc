import { expect, test } from 'vitest'
import { recordOf } from '../../src/shared/collect/session-record'
import type { SessionRun } from '../../src/shared/collect/session-run'
import type { App } from '../../src/state/app'
import { freshPlan } from '../../src/state/collect'
import { newId } from '../../src/state/id'
import type { SessionsState } from '../../src/state/session'
import { openStore } from '../../src/storage/open-store'
import { exampleSamples, exampleTake } from '../storage/examples'
import { freshName, openApp } from './app-bench'

const FIRST = 4
const SECOND = 3

interface TwoParts {
  /** Of the database. */
  name: string
  app: App
  sessions: SessionsState
  first: SessionRun
  second: SessionRun
  takesOf(run: SessionRun): number
}

/** One tester's two parts of a plan, handed over, and a take of somebody of no session. */
async function twoParts(): Promise<TwoParts> {
  const name = freshName()
  const app = await openApp(name)
  await app.library.create('Night parade')
  await app.library.addGesture('Raise')
  const library = app.library.current.value!
  const sessions = await app.openSessions()
  const plan = freshPlan(library)
  const first = await sessions.begin(plan, 'right')
  if (!first.ok) throw new Error(first.message)
  const second = await sessions.begin({ ...plan, id: 'part-2' }, 'right', first.value)
  if (!second.ok) throw new Error(second.message)
  const store = await openStore(name)
  const takes = [
    ...Array.from({ length: FIRST }, () => first.value),
    ...Array.from({ length: SECOND }, () => second.value),
    null,
  ]
  const added = await store.addRecordings(
    takes.map((run, n) => ({
      recording: exampleTake({
        id: newId(),
        libraryId: library.id,
        gestureId: library.gestures[0]!.id,
        testerCode: run?.testerCode ?? 'T09',
        ...(run === null ? {} : { sessionId: run.id }),
      }),
      samples: exampleSamples(60, n),
    })),
  )
  if (!added.ok) throw new Error(added.message)
  store.close()
  await sessions.finish(first.value.id)
  await sessions.finish(second.value.id)
  return {
    name,
    app,
    sessions,
    first: first.value,
    second: second.value,
    takesOf: ({ id }) =>
      app.library.recordings.value.filter(({ sessionId }) => sessionId === id).length,
  }
}

const undo = (app: App, said: RegExp) =>
  app.undoable.value.find(({ text }) => said.test(text))?.undo?.()
const sessionIds = (app: App) => app.library.current.value?.sessions?.map(({ id }) => id) ?? []

test('deleting one part of a tester leaves the others, and undo brings all of it back', async () => {
  const { app, sessions, first, second, takesOf } = await twoParts()
  expect([takesOf(first), takesOf(second)]).toEqual([FIRST, SECOND])
  expect((await sessions.withdraw(second.id)).ok).toBe(true)
  expect([takesOf(first), takesOf(second)]).toEqual([FIRST, 0])
  expect(sessionIds(app)).toEqual([first.id])
  expect(sessions.runs.value.map(({ id }) => id)).toEqual([first.id])
  expect(app.library.current.value?.withdrawals).toMatchObject([
    { kind: 'session', key: second.id, why: 'withdrawn', testerCode: second.testerCode },
  ])
  await undo(app, /^Session \w+ deleted/)
  expect([takesOf(first), takesOf(second)]).toEqual([FIRST, SECOND])
  expect(sessionIds(app).sort()).toEqual([first.id, second.id].sort())
  expect(sessions.runs.value).toHaveLength(2)
  expect(app.library.current.value?.withdrawals ?? []).toEqual([])
})

test('undo of a deleted session keeps what was withdrawn after it', async () => {
  const { app, sessions, second, takesOf } = await twoParts()
  await sessions.withdraw(second.id)
  await (await app.openCollect()).withdraw('T09')
  const later = app.library.current.value!.withdrawals!.filter(({ kind }) => kind === 'content')
  expect(later).toHaveLength(1)
  await undo(app, /^Session \w+ deleted/)
  expect(takesOf(second)).toBe(SECOND)
  expect(app.library.current.value?.withdrawals).toEqual(later)
  expect(app.library.recordings.value.some(({ testerCode }) => testerCode === 'T09')).toBe(false)
})

test('undo brings nothing back of a tester who withdrew altogether since', async () => {
  const { app, sessions, first, second, takesOf } = await twoParts()
  await sessions.withdraw(second.id)
  await (await app.openCollect()).withdraw(first.testerCode)
  await undo(app, /^Session \w+ deleted/)
  expect([takesOf(first), takesOf(second)]).toEqual([0, 0])
  expect(sessionIds(app)).toEqual([])
  expect(app.notices.value.at(-1)?.text).toMatch(/withdrew altogether since/)
})

test('a session is not gone on with when a kill fell while it was being deleted', async () => {
  const { name, sessions, first, second } = await twoParts()
  await sessions.withdraw(second.id)
  // As the kill leaves it: its takes have gone, the record of where it stood has not.
  const store = await openStore(name)
  const { id, startedAt: keptAt, plan } = second
  const value = recordOf({ ...second, outcomes: [], endedAt: null })
  await store.putItem('sessions', { id, libraryId: plan.libraryId, keptAt, value })
  store.close()
  const next = await (await openApp(name)).openSessions()
  await next.read()
  expect(next.runs.value.map((run) => run.id)).toEqual([first.id])
  expect(await next.open(second.id)).toMatchObject({ ok: false, code: 'session/gone' })
})
