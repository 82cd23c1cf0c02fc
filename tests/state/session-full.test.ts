import 'fake-indexeddb/auto'
import './browser-globals'
import { signal } from '@preact/signals'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { createSimulatedSource } from '../../src/sensors/simulated-source'
import { currentPrompt } from '../../src/shared/collect/session-run'
import { fail, ok } from '../../src/shared/model/result'
import { defaultTarget } from '../../src/shared/target/default-target'
import { createMotion } from '../../src/state/motion'
import { createNotices } from '../../src/state/notices'
import { createSessions, type SessionRunner, type SessionsState } from '../../src/state/session'
import { createShelf } from '../../src/state/shelf'
import { openStore } from '../../src/storage/open-store'
import type { Store } from '../../src/storage/store'
import { PlayedSource } from '../recording/played-source'
import { samplePlan } from '../shared/collect/samples'
import { clientHere, freshName } from './app-bench'

globalThis.document ??= Object.assign(new EventTarget(), {
  visibilityState: 'visible',
}) as unknown as Document

const NO_ROOM = fail('storage/full', 'No room.')

let full: boolean
let store: Store
let source: PlayedSource
let sessions: SessionsState
let runner: SessionRunner

/** The store on a disk that is full from time to time. */
function small(whole: Store): Store {
  return {
    ...whole,
    openJournal: async (recording) => {
      const journal = await whole.openJournal(recording)
      if (!journal.ok) return journal
      const { value } = journal
      return ok({
        append: async (block) => (full ? NO_ROOM : await value.append(block)),
        finish: async (finished) => (full ? NO_ROOM : await value.finish(finished)),
        discard: () => value.discard(),
        leave: () => value.leave(),
      })
    },
  }
}

/** A tester whose background is recorded for 3 s before the disk is full and for 3 s after. */
beforeEach(async () => {
  full = false
  store = await openStore(freshName())
  source = new PlayedSource()
  sessions = createSessions({
    shelf: createShelf(small(store), createNotices()),
    motion: createMotion({ phone: source, simulated: createSimulatedSource(1) }),
    recogniser: clientHere(),
    performing: signal(false),
    deviceLabel: 'test',
    defaultTarget,
  })
  const begun = await sessions.begin(samplePlan({ restEvery: 0 }), 'right')
  const opened = begun.ok ? await sessions.open(begun.value.id) : begun
  if (!opened.ok) throw new Error(opened.message)
  runner = opened.value
  while (currentPrompt(runner.run.value)?.kind === 'take') await runner.skip()
  await source.start()
  await source.play(500)
  void runner.start()
  await expect.poll(() => runner.phase.value.name, { timeout: 10_000 }).toBe('background')
  await source.play(3000)
  full = true
  await source.play(3000)
})

afterEach(() => {
  runner.close()
  store.close()
})

const stored = () => store.listRecordings('parade')

test('a background that ends on a full disk is stored whole by the next tap that finds room', async () => {
  await runner.endBackground()
  expect(runner.phase.value).toMatchObject({ name: 'not-stored' })
  await runner.start()
  expect(runner.phase.value).toMatchObject({ name: 'not-stored', message: 'No room.' })
  full = false
  await runner.start()
  expect(runner.phase.value).toEqual({ name: 'ended' })
  const [background] = await stored()
  expect(background?.durationMs).toBeCloseTo(6000, -2)
})

test('paused on a full disk it is stored by the next tap, and the rest of it is asked for', async () => {
  await runner.pause()
  full = false
  await runner.start()
  expect(runner.phase.value).toEqual({ name: 'paused' })
  expect((await stored())[0]?.durationMs).toBeCloseTo(6000, -2)
  expect(currentPrompt(runner.run.value)?.kind).toBe('background')
})

test('left on a full disk, what was stored of it is kept when the session is opened again', async () => {
  await runner.endBackground()
  runner.close()
  await expect.poll(async () => (await store.unfinished()).length).toBe(1)
  full = false
  const again = await sessions.open(runner.run.value.id)
  if (!again.ok) throw new Error(again.message)
  again.value.close()
  const [background] = await stored()
  expect(background?.durationMs).toBeGreaterThan(2000)
})
