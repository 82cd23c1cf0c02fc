import { afterEach, describe, expect, test, vi } from 'vitest'
import type { SimulatedSource } from '../../src/sensors/simulated-source'
import type { App } from '../../src/state/app'
import { openApp } from './app-bench'

let app: App

async function simulated(): Promise<SimulatedSource> {
  app.motion.use('simulated')
  await app.motion.start()
  return app.motion.source() as SimulatedSource
}

async function pause(ms: number): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, ms))
}

async function perform(source: SimulatedSource, id: string): Promise<void> {
  await pause(400)
  source.perform(id)
  await vi.waitUntil(() => !source.busy(), { timeout: 5000 })
}

/** Offers a take; another one where a busy computer lost readings of the first. */
async function holdWhileRinging(source: SimulatedSource, gestureId: string): Promise<void> {
  for (let attempt = 0; attempt < 4; attempt++) {
    expect(await app.record.beginHold(gestureId)).toEqual({ ok: true, value: null })
    await perform(source, 'ring')
    await app.record.endHold()
    if (!app.record.offered.value?.quality.some(({ code }) => code === 'gap')) return
    await app.record.drop()
  }
}

afterEach(() => app.motion.source().stop())

describe('recording with the simulated phone', () => {
  test('a held take is offered, kept, counted, and makes the model stale', async () => {
    app = await openApp()
    await app.library.addDemo()
    const [gesture] = app.library.current.value?.gestures ?? []
    const before = app.library.recordings.value.length
    expect(await app.train()).toMatchObject({ ok: true })
    const source = await simulated()
    await pause(100)
    await holdWhileRinging(source, gesture?.id ?? '')
    expect(app.record.offered.value).toMatchObject({
      recording: { gestureId: gesture?.id, source: 'simulated' },
      quality: [{ code: 'good' }],
    })
    await app.record.keep()
    await vi.waitUntil(() => app.library.recordings.value.length === before + 1, {
      timeout: 15_000,
    })
    expect(app.record.offered.value).toBeNull()
    expect(app.model.value).toMatchObject({ state: 'done', stale: true })
  })

  test('a hands-free take that looks good is kept without asking when that is wished, and can be taken back', async () => {
    app = await openApp()
    await app.library.addDemo()
    const [gesture] = app.library.current.value?.gestures ?? []
    const before = app.library.recordings.value.length
    const source = await simulated()
    await pause(100)
    expect(await app.record.beginHandsFree(gesture?.id ?? '', true)).toMatchObject({ ok: true })
    await pause(1200)
    await perform(source, 'ring')
    await vi.waitUntil(() => app.library.recordings.value.length === before + 1, { timeout: 5000 })
    expect(app.record.offered.value).toBeNull()
    expect(app.notices.value[0]?.text).toBe(`Take of ${gesture?.name} kept.`)
    await app.undoable.value[0]?.undo?.()
    expect(app.library.recordings.value.length).toBe(before)
    await app.record.stop()
  })

  test('an offered take waits for its own library: another one neither shows nor keeps it', async () => {
    app = await openApp()
    await app.library.addDemo()
    const own = app.library.current.value!
    const before = app.library.recordings.value.length
    const source = await simulated()
    await pause(100)
    await app.record.beginHold(own.gestures[0]!.id)
    await perform(source, 'ring')
    await app.record.endHold()
    const id = app.record.offered.value?.recording.id
    expect(id).toBeDefined()
    const created = await app.library.create('Another')
    expect(created).toMatchObject({ ok: true })
    expect([app.record.offered.value, app.record.waiting.value]).toEqual([null, 0])
    await app.record.keep()
    await app.record.drop()
    expect(app.library.recordings.value).toEqual([])
    await app.library.open(own.id)
    expect(app.library.recordings.value).toHaveLength(before)
    expect(app.record.offered.value?.recording).toMatchObject({ id, libraryId: own.id })
    await app.record.keep()
    await vi.waitUntil(() => app.library.recordings.value.length === before + 1, {
      timeout: 15_000,
    })
    expect(app.library.recordings.value[0]).toMatchObject({ id, libraryId: own.id })
  })

  test('own takes never get the code of a tester of the demo', async () => {
    app = await openApp()
    app.record.setTester('T01', 'left')
    await app.library.addDemo()
    expect(app.record.testerCode.value).toBe('T03')
    expect(app.record.hand.value).toBe('left')
  })

  test('a hold without a running sensor is refused with what to do', async () => {
    app = await openApp()
    await app.library.addDemo()
    const refused = await app.record.beginHold(app.library.current.value?.gestures[0]?.id ?? '')
    expect(refused).toMatchObject({ ok: false, code: 'record/no-readings' })
    expect(app.record.phase.value).toBe('idle')
  })

  test('an insecure page is told so by the phone, and the simulated phone still works', async () => {
    app = await openApp()
    expect(await app.motion.start()).toBe('insecure')
    expect(app.motion.facts.value.simulated).toBe(false)
    await simulated()
    expect(app.motion.status.value).toBe('running')
    expect(app.motion.facts.value.simulated).toBe(true)
  })
})

describe('live recognition', () => {
  test('names a movement of the simulated phone and stops when another library is opened', async () => {
    app = await openApp()
    await app.library.addDemo()
    app.motion.use('simulated')
    expect(await app.live.start()).toEqual({ ok: true, value: null })
    const source = app.motion.source() as SimulatedSource
    await pause(1200)
    source.perform('pour')
    await vi.waitUntil(() => app.live.events.value.length > 0, { timeout: 8000 })
    const [event] = app.live.events.value
    const pour = app.library.current.value?.gestures.findIndex(({ name }) => name === 'Pour')
    expect(event?.event).toMatchObject({ kind: 'gesture', gesture: pour })
    expect(app.live.sampleCount.value).toBeGreaterThan(100)
    await app.library.create('Another')
    expect(app.live.running.value).toBe(false)
  })
})
