import { openDB } from 'idb'
import { expect, test } from 'vitest'
import type { App } from '../../src/state/app'
import { openStore } from '../../src/storage/open-store'
import { sampleSession, sampleSessionFile } from '../shared/collect/samples'
import { freshName, openApp } from './app-bench'
import { madeFile, opened, restored } from './backup-bench'
import { asFile, bringHome, open, takes } from './collect-bench'

const OTHER = { id: 'c'.repeat(32), testerKey: 'd'.repeat(32), testerCode: 'M2N8PZ3' }
const { testerCode } = sampleSession()
/** Six takes and a background each. */
const EACH = 7

const codes = (app: App) => [...new Set(takes(app).map((one) => one.testerCode))]

/** As a day after the deletion, when nothing can be undone any more. */
async function purge(name: string): Promise<void> {
  const store = await openStore(name)
  await store.purgeDeleted('9999-01-01T00:00:00Z')
  expect(await store.listDeletedLibraries()).toEqual([])
  store.close()
}

/**
 * A library with two testers' sessions, backed up; then one tester withdraws, a take of the other is
 * dropped, and the library goes for good.
 */
async function goneForGood() {
  const name = freshName()
  const { app, session } = await open(name)
  const library = app.library.current.value!
  const other = sampleSessionFile(6, { ...session.session, ...OTHER }, 2)
  await bringHome(app, session)
  await bringHome(app, other)
  const backup = await app.openBackup()
  const file = await madeFile(backup)
  const collect = await app.openCollect()
  await collect.withdraw(testerCode)
  const dropped = takes(app).find(({ kind }) => kind === 'take')!
  await collect.drop([dropped.id])
  await app.library.removeLibrary(library.id)
  await purge(name)
  return { name, app, session, backup, file, library }
}

test('a backup from before brings nothing back of who withdrew, long after the library has gone', async () => {
  const { app, backup, file } = await goneForGood()
  const [planned] = await backup.plan(await opened(backup, file), 'add')
  expect(planned).toMatchObject({ way: { kind: 'as-it-was' }, withheld: EACH + 1 })
  expect(await restored(backup, file)).toEqual({ ok: true, value: EACH - 1 })
  expect(codes(app)).toEqual([OTHER.testerCode])
  const { sessions, withdrawals } = app.library.current.value!
  expect(sessions?.map(({ id }) => id)).toEqual([OTHER.id])
  expect(new Set(withdrawals?.map(({ why }) => why))).toEqual(new Set(['withdrawn', 'dropped']))
})

test('the backup has them all: a phone that never heard of it gets them', async () => {
  const { file } = await goneForGood()
  const elsewhere = await openApp()
  expect(await restored(await elsewhere.openBackup(), file)).toEqual({ ok: true, value: 2 * EACH })
  expect(codes(elsewhere).sort()).toEqual([testerCode, OTHER.testerCode].sort())
})

test('put beside they stay out too', async () => {
  const { app, backup, file } = await goneForGood()
  expect(await restored(backup, file, 'beside')).toEqual({ ok: true, value: EACH - 1 })
  expect(codes(app)).toEqual([OTHER.testerCode])
})

test('a library that was begun anew under its id takes in the backup without them', async () => {
  const { name, app, backup, file, library } = await goneForGood()
  const store = await openStore(name)
  await store.putLibrary({ ...library, plans: [], sessions: [], withdrawals: [] })
  store.close()
  expect(await restored(backup, file)).toEqual({ ok: true, value: EACH - 1 })
  expect(codes(app)).toEqual([OTHER.testerCode])
})

test("the withdrawn session's own file stays out of the restored library, and of one begun anew", async () => {
  const { name, app, session, backup, file, library } = await goneForGood()
  await restored(backup, file)
  const collect = await app.openCollect()
  const keptOut = async () => {
    await collect.bring([asFile(session)])
    const { value } = collect.bringing
    return value.state === 'report' ? value.report.merge.keptOut : value
  }
  expect(await keptOut()).toEqual({ withdrawn: EACH, dropped: 0 })
  collect.forget()

  await app.library.removeLibrary(library.id)
  await purge(name)
  const store = await openStore(name)
  await store.putLibrary({ ...library, plans: [], sessions: [], withdrawals: [] })
  store.close()
  const fresh = await openApp(name)
  const again = await fresh.openCollect()
  await again.bring([asFile(session)])
  const { value } = again.bringing
  if (value.state !== 'report') throw new Error('no report')
  expect(value.report.merge.keptOut).toEqual({ withdrawn: EACH, dropped: 0 })
  await again.agree()
  expect(takes(fresh)).toEqual([])
})

test('what stays of withdrawals is digests, and nothing of the testers', async () => {
  const { name, session } = await goneForGood()
  const db = await openDB(name)
  const marks = await db.getAll('marks')
  expect(marks.length).toBeGreaterThanOrEqual(3)
  for (const mark of marks) {
    expect(mark).toEqual({
      id: expect.stringMatching(/^[0-9a-f]{64}$/),
      why: expect.stringMatching(/^(withdrawn|dropped)$/),
    })
  }
  const { id, testerKey } = session.session
  const text = JSON.stringify(marks)
  for (const known of [id, testerKey, testerCode]) expect(text).not.toContain(known)
  db.close()
})
