import { afterAll, afterEach, beforeAll, expect, it } from 'vitest'
import type { Recording } from '../../src/shared/model/library'
import { makeProfile } from '../support/chromium'
import { describeWithTools } from '../support/tools'
import { type PageServer, servePages } from './page-server'
import { openRig, type Profile, type Rig } from './rig'

interface Left {
  recording: Recording
  samples: number
}

/** Unfinished recordings as the page sees them, without the samples themselves. */
const LEFT = `bench.store.unfinished().then((all) =>
  all.map(({ recording, samples }) => ({ recording, samples: samples.tMs.length })))`

describeWithTools('storage in a real browser', ['chromium'], () => {
  let server: PageServer
  let rig: Rig
  const cache = makeProfile()

  beforeAll(async () => {
    server = await servePages(cache.folder)
  })

  afterAll(async () => {
    await server?.close()
    cache.remove()
  })

  afterEach(async () => {
    await rig.close()
    rig.profile.remove()
  })

  async function load(profile?: Profile): Promise<void> {
    rig = await openRig(profile === undefined ? {} : { profile })
    await rig.open(server.pageUrl('recorder.html'))
    await rig.until('window.ready')
  }

  async function startSensors(): Promise<void> {
    await rig.page.tap('#start')
    await rig.until('bench.source.status() === "running"')
  }

  /** Kills the browser and starts it again on what the disk holds. */
  async function killAndReload(): Promise<void> {
    await rig.kill()
    await load(rig.profile)
  }

  it.each(['take', 'background'] as const)(
    'a %s killed while it is recorded loses about a second at most, and is offered',
    async (kind) => {
      await load()
      await startSensors()
      await rig.until('bench.recorder.trace(2000).tMs.length > 60')
      const begun = await rig.look(
        kind === 'take'
          ? 'bench.recorder.beginHold(bench.setup, "raise")'
          : 'bench.recorder.beginBackground(bench.setup)',
      )
      expect(begun).toMatchObject({ ok: true })
      await rig.until('bench.recorder.elapsedMs() > 4900')
      const elapsedMs = await rig.look<number>('bench.recorder.elapsedMs()')
      await killAndReload()

      const [left, ...others] = await rig.look<Left[]>(LEFT)
      expect(others).toEqual([])
      const leadInMs = kind === 'take' ? 1000 : 0
      const lostMs = elapsedMs + leadInMs - left!.recording.durationMs
      expect(lostMs).toBeLessThan(1250)
      expect(left!.recording).toMatchObject({ kind, libraryId: 'parade', testerCode: 'A' })
      expect(left!.samples).toBe(left!.recording.sampleCount)

      const kept = `bench.store.finishUnfinished('${left!.recording.id}', ${JSON.stringify(left!.recording)})`
      expect(await rig.look(kept)).toMatchObject({ ok: true })
      expect(await rig.look(LEFT)).toEqual([])
      expect(await rig.look(`bench.store.listRecordings('parade').then((all) => all.length)`)).toBe(
        1,
      )
    },
  )

  it('a take that was offered but not yet kept is all there after a kill', async () => {
    await load()
    await startSensors()
    await rig.until('bench.recorder.trace(2000).tMs.length > 60')
    await rig.look('bench.recorder.beginHold(bench.setup, "raise")')
    await rig.until('bench.recorder.elapsedMs() > 700')
    await rig.look('bench.recorder.endHold()')
    const offered = await rig.look<Recording>('bench.offered[0].recording')
    await killAndReload()
    const [left] = await rig.look<Left[]>(LEFT)
    expect(left!.recording.id).toBe(offered.id)
    expect(left!.samples).toBe(offered.sampleCount)
  })

  it('what was said to be stored is there after a kill at that very moment', async () => {
    await load()
    for (let i = 0; i < 20; i++) {
      expect(await rig.look(`bench.addTake('take-${i}', 120)`)).toMatchObject({ ok: true })
    }
    await killAndReload()
    expect(await rig.look(`bench.store.listRecordings('parade').then((all) => all.length)`)).toBe(
      20,
    )
    expect(await rig.look(`bench.store.loadSamples('take-19').then(({ tMs }) => tMs.length)`)).toBe(
      120,
    )
  })

  it('a library is there whole or not at all when the kill hits while it is added', async () => {
    await load()
    await rig.look('void bench.addLarge(300, 2000)')
    await rig.kill()
    await load(rig.profile)
    const counts = await rig.look<(number | null)[]>(
      `Promise.all([
        bench.store.loadFull('large').then((full) => full && full.recordings.length),
        bench.store.listRecordings('large').then((all) => all.length),
      ])`,
    )
    expect([
      [null, 0],
      [300, 300],
    ]).toContainEqual(counts)
  })

  it('a full disk is told in words and leaves the library as it was', async () => {
    const address = server.pageUrl('recorder.html')
    rig = await openRig()
    // Before the first write: the browser remembers for a while how much room there was.
    await rig.session.send('Storage.overrideQuotaForOrigin', {
      origin: new URL(address).origin,
      quotaSize: 200_000,
    })
    await rig.open(address)
    await rig.until('window.ready')
    expect(await rig.look(`bench.addTake('before', 60)`)).toMatchObject({ ok: true })
    expect(await rig.look('bench.addLarge(20, 2000)')).toMatchObject({
      ok: false,
      code: 'storage/full',
    })
    expect(await rig.look(`bench.store.listLibraries().then((all) => all.length)`)).toBe(1)
    expect(await rig.look(`bench.store.loadSamples('before').then(({ tMs }) => tMs.length)`)).toBe(
      60,
    )
    expect(await rig.look(`bench.store.loadSamples('large-0')`)).toBe(null)
  })

  it('a recording in another tab is offered only once that tab is gone', async () => {
    await load()
    await startSensors()
    await rig.look('bench.recorder.beginBackground(bench.setup)')
    await rig.until('bench.recorder.elapsedMs() > 1500')
    const other = await rig.context.newPage()
    await other.goto(server.pageUrl('recorder.html'))
    await other.waitForFunction('window.ready')
    expect(await other.evaluate(LEFT)).toEqual([])
    await rig.page.close()
    await expect.poll(() => other.evaluate(LEFT)).toHaveLength(1)
  })

  it('says how much room there is and whether the browser keeps the data', async () => {
    await load()
    const facts = await rig.look<Record<string, unknown>>('bench.store.facts()')
    expect(facts).toMatchObject({ persisted: false, unreadableItems: 0 })
    expect(facts.quotaBytes).toBeGreaterThan(1_000_000)
    const { origin } = new URL(rig.page.url())
    await rig.session.send('Browser.setPermission', {
      permission: { name: 'persistent-storage' },
      setting: 'granted',
      origin,
    })
    expect(await rig.look('bench.store.requestPersistence()')).toBe(true)
    expect(await rig.look('bench.store.facts()')).toMatchObject({ persisted: true })
  })
})
