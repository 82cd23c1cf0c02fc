import { afterAll, beforeAll, expect, it } from 'vitest'
import type { OfferedTake } from '../../src/recording/types'
import type { Recording } from '../../src/shared/model/library'
import { makeProfile } from '../support/chromium'
import { describeWithTools } from '../support/tools'
import { BareChromium } from './bare-chromium'
import { evaluate, waitUntil } from './page-expressions'
import { type PageServer, servePages } from './page-server'
import { openRig, type Profile, type Rig } from './rig'
import { VirtualSensors } from './virtual-sensors'

interface Left {
  recording: Recording
  lastMs: number
}

const LEFT = `bench.store.unfinished().then((all) =>
  all.map(({ recording, samples }) => ({ recording, lastMs: samples.tMs.at(-1) })))`

/** What phones do to a page while it records. */
describeWithTools('a recording under faults, in a real browser', ['chromium'], () => {
  let server: PageServer
  const cache = makeProfile()

  beforeAll(async () => {
    server = await servePages(cache.folder)
  })
  afterAll(async () => {
    await server?.close()
    cache.remove()
  })

  /** The recorder's page with running sensors; `before` runs in the page before anything else. */
  async function startRig(before?: string, profile?: Profile): Promise<Rig> {
    const rig = await openRig(profile === undefined ? {} : { profile })
    if (before !== undefined) await rig.page.addInitScript(before)
    await rig.open(server.pageUrl('recorder.html'))
    await rig.until('window.ready')
    await rig.page.tap('#start')
    await rig.until('bench.source.status() === "running"')
    return rig
  }

  async function heldTake(rig: Rig, during: () => Promise<void>): Promise<OfferedTake> {
    await rig.until('bench.recorder.trace(2000).tMs.length > 60')
    await rig.look('bench.recorder.beginHold(bench.setup, "raise")')
    await rig.until('bench.recorder.elapsedMs() > 500')
    await during()
    const beforeMs = await rig.look<number>('bench.recorder.elapsedMs()')
    await rig.until(`bench.recorder.elapsedMs() > ${beforeMs + 500}`)
    await rig.look('bench.recorder.endHold()')
    return rig.look<OfferedTake>(`({ ...bench.offered[0],
      samples: { tMs: [...bench.offered[0].samples.tMs], values: [] } })`)
  }

  it('a page that is put away writes at once: a kill there loses next to nothing', async () => {
    const profile = makeProfile()
    let browser = new BareChromium(profile.folder)
    const open = async () => {
      const tab = await browser.openTab()
      await new VirtualSensors(tab.session).enable()
      await tab.session.send('Page.navigate', { url: server.pageUrl('recorder.html') })
      await waitUntil(tab.session, 'window.ready')
      return tab.session
    }
    const session = await open()
    const look = <T>(expression: string) => evaluate<T>(session, expression)
    expect(await look('bench.source.start()')).toBe('running')
    await waitUntil(session, 'bench.recorder.trace(2000).tMs.length > 30')
    await look('bench.recorder.beginBackground(bench.setup)')
    await waitUntil(session, 'bench.recorder.elapsedMs() > 1700')
    await browser.openTab()
    await waitUntil(session, 'document.visibilityState === "hidden"')
    const elapsedMs = await look<number>('bench.recorder.elapsedMs()')
    await new Promise((resolve) => setTimeout(resolve, 500))
    await browser.kill()
    browser = new BareChromium(profile.folder)
    const [left] = await evaluate<Left[]>(await open(), LEFT)
    expect(elapsedMs - left!.lastMs).toBeLessThan(100)
    // The journal's own rhythm alone would have lost what came after its last whole second.
    expect(left!.lastMs % 1000).toBeGreaterThan(100)
    await browser.close()
    profile.remove()
  })

  it('a hole in the readings is kept in the take and said; without it the take looks even', async () => {
    const rig = await startRig()
    const { recording, samples, quality } = await heldTake(rig, async () => {
      // Readings that come while the page is stuck are lost, as a phone's are.
      await rig.look(
        `(() => { const end = performance.now() + 450; while (performance.now() < end); })()`,
      )
    })
    // A busy computer may lose readings of its own, for a shorter while.
    const long = recording.gaps.filter(({ startMs, endMs }) => endMs - startMs > 300)
    expect(long).toHaveLength(1)
    expect(quality.map(({ code }) => code)).toContain('gap')
    const steps = [...samples.tMs].slice(1).map((t, i) => t - samples.tMs[i]!)
    const median = steps.sort((a, b) => a - b)[steps.length >> 1]!
    expect(median, 'rate and count alone tell nothing').toBeLessThan(20)
    await rig.close()
    rig.profile.remove()
  })

  it.each([-3_600_000, 3_600_000])(
    'a clock set by %i ms neither stops nor tears a take',
    async (shiftMs) => {
      const rig = await startRig(`
      window.shiftMs = 0
      window.refused = 0
      window.lastMs = 0
      const { get } = Object.getOwnPropertyDescriptor(Event.prototype, 'timeStamp')
      Object.defineProperty(Event.prototype, 'timeStamp', {
        get() { return get.call(this) + window.shiftMs },
      })
      // What takes the events' times as they are refuses all that seem old, or sees a gap.
      window.addEventListener('devicemotion', ({ timeStamp }) => {
        if (timeStamp < window.lastMs || timeStamp > window.lastMs + 60_000 && window.lastMs > 0) window.refused += 1
        else window.lastMs = timeStamp
      })`)
      const { recording, samples } = await heldTake(rig, async () => {
        await rig.look(`window.shiftMs = ${shiftMs}`)
      })
      expect(await rig.look<number>('window.refused')).toBeGreaterThan(20)
      expect(recording.durationMs).toBeGreaterThan(1900)
      expect(recording.durationMs).toBeLessThan(30_000)
      expect(samples.tMs.length).toBeGreaterThan(60)
      expect(await rig.look('bench.source.status()')).toBe('running')
      await rig.close()
      rig.profile.remove()
    },
  )

  it('timers slowed to once a minute, as by a battery saver, cost nothing', async () => {
    let rig = await startRig(`
      const later = window.setTimeout
      window.setTimeout = (work, ms, ...rest) => later(work, Math.max(ms ?? 0, 60_000), ...rest)
      window.ticks = 0
      const again = window.setInterval
      window.setInterval = (work, ms, ...rest) => again(work, Math.max(ms ?? 0, 60_000), ...rest)
      window.setInterval(() => { window.ticks += 1 }, 1000)`)
    await rig.look('bench.recorder.beginBackground(bench.setup)')
    await rig.until('bench.recorder.elapsedMs() > 3500')
    const elapsedMs = await rig.look<number>('bench.recorder.elapsedMs()')
    expect(await rig.look('window.ticks'), 'a journal by a timer would have nothing').toBe(0)
    await rig.kill()
    rig = await openRig({ profile: rig.profile })
    await rig.open(server.pageUrl('recorder.html'))
    await rig.until('window.ready')
    const [left] = await rig.look<Left[]>(LEFT)
    expect(elapsedMs - left!.lastMs).toBeLessThan(1250)
    await rig.close()
    rig.profile.remove()
  })
})
