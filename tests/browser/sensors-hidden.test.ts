import { afterAll, beforeAll, expect, it } from 'vitest'
import type { MotionSample } from '../../src/sensors/motion-source'
import { makeProfile } from '../support/chromium'
import { describeWithTools } from '../support/tools'
import { BareChromium } from './bare-chromium'
import { evaluate, waitUntil } from './page-expressions'
import { type PageServer, servePages } from './page-server'
import { VirtualSensors } from './virtual-sensors'

describeWithTools('the phone source on a page that is hidden for a while', ['chromium'], () => {
  const profile = makeProfile()
  let server: PageServer
  let browser: BareChromium

  beforeAll(async () => {
    server = await servePages(profile.folder)
    browser = new BareChromium(profile.folder)
  })

  afterAll(async () => {
    await browser?.close()
    await server?.close()
    profile.remove()
  })

  it('is lost at once, reads nothing meanwhile, and runs again by itself', async () => {
    const { targetId, session } = await browser.openTab()
    const look = <T>(expression: string) => evaluate<T>(session, expression)
    await new VirtualSensors(session).enable()
    await session.send('Page.navigate', { url: server.pageUrl('sensors.html') })
    await waitUntil(session, 'window.source')
    expect(await look('source.start()')).toBe('running')
    await waitUntil(session, 'samples.length > 30')

    await browser.openTab()
    await waitUntil(session, 'document.visibilityState === "hidden"')
    expect(await look('source.status()')).toBe('lost')
    const before = await look<number>('samples.length')
    await new Promise((resolve) => setTimeout(resolve, 700))
    expect(await look('samples.length')).toBe(before)

    await browser.activate(targetId)
    await waitUntil(session, 'source.status() === "running"')
    const [last, next] = await look<MotionSample[]>(`samples.slice(${before - 1}, ${before + 1})`)
    expect(next!.tMs - last!.tMs).toBeGreaterThan(600)
    expect(await look('statuses')).toEqual(['starting', 'running', 'lost', 'running'])
  })
})
