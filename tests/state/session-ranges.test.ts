import 'fake-indexeddb/auto'
import './browser-globals'
import { signal } from '@preact/signals'
import { expect, test } from 'vitest'
import { createSimulatedSource } from '../../src/sensors/simulated-source'
import type { Plan } from '../../src/shared/collect/plan'
import { decodePlanLink, encodePlanLink } from '../../src/shared/collect/plan-link'
import { defaultTarget } from '../../src/shared/target/default-target'
import { createMotion } from '../../src/state/motion'
import { createNotices } from '../../src/state/notices'
import { createSessions, type SessionRunner } from '../../src/state/session'
import { createShelf } from '../../src/state/shelf'
import { openStore } from '../../src/storage/open-store'
import { PlayedSource } from '../recording/played-source'
import { samplePlan } from '../shared/collect/samples'
import { clientHere, freshName } from './app-bench'

globalThis.document ??= Object.assign(new EventTarget(), {
  visibilityState: 'visible',
}) as unknown as Document

/** A phone that has never seen the plan's library: the session's first take, as the tester makes it. */
async function firstTakeOn(plan: Plan): Promise<SessionRunner['phase']['value']> {
  const link = encodePlanLink(plan)
  const scanned = link.ok ? decodePlanLink(link.value) : link
  if (!scanned.ok) throw new Error(scanned.message)
  const store = await openStore(freshName())
  const shelf = createShelf(store, createNotices())
  const source = new PlayedSource()
  const sessions = createSessions({
    shelf,
    motion: createMotion({ phone: source, simulated: createSimulatedSource(1) }),
    recogniser: clientHere(),
    performing: signal(false),
    deviceLabel: 'test',
    defaultTarget,
  })
  const begun = await sessions.begin(scanned.value, 'right')
  const opened = begun.ok ? await sessions.open(begun.value.id) : begun
  if (!opened.ok) throw new Error(opened.message)
  const runner = opened.value
  await source.start()
  await source.play(1500)
  const led = runner.start()
  await expect.poll(() => runner.phase.value.name, { timeout: 10_000 }).toBe('go')
  source.hand.perform('swing')
  const judged = () => ['doubt', 'good', 'not-stored'].includes(runner.phase.value.name)
  while (!judged()) await source.play(200)
  const phase = runner.phase.value
  runner.close()
  await led
  store.close()
  return phase
}

const RANGES = {
  /** Far below what a swung lantern does. */
  small: {
    accel: { fullScale: 2, nanoPerLsb: 30_000 },
    gyro: { fullScale: 125, nanoPerLsb: 4_375_000 },
  },
  large: {
    accel: { fullScale: 16, nanoPerLsb: 488_000 },
    gyro: { fullScale: 2000, nanoPerLsb: 70_000_000 },
  },
}

test('a take is judged by the ranges that its plan brings, and not by those of a stand-in', async () => {
  const known = await firstTakeOn(samplePlan({ ranges: RANGES.small }))
  expect(known).toMatchObject({ name: 'doubt', words: [{ code: 'clipped' }] })
  const text = known.name === 'doubt' ? known.words[0]?.text : ''
  expect(text).toContain('125')
  expect(await firstTakeOn(samplePlan({ ranges: RANGES.large }))).toEqual({ name: 'good' })
})

test('where the plan brings none, the stand-in is what takes are judged by', async () => {
  expect(await firstTakeOn(samplePlan())).toEqual({ name: 'good' })
})
