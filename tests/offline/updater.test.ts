import { appendFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import type { BrowserContext } from 'playwright-core'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { type RunningServer, serveFolder } from '../../src/build/static-server'
import { makeProfile, openChromium } from '../support/chromium'
import { describeWithTools } from '../support/tools'
import {
  apply,
  type FixtureHost,
  latePartOf,
  lookForUpdate,
  makeFixtureHost,
  setRecording,
  stateOf,
  versionOf,
  waitForState,
} from './fixture-app'

describeWithTools('offline use in Chromium', ['chromium'], () => {
  let host: FixtureHost
  let profile: ReturnType<typeof makeProfile>
  let browser: BrowserContext
  let server: RunningServer
  let address: string

  beforeEach(async () => {
    host = makeFixtureHost()
    await host.publish('one')
    profile = makeProfile()
    browser = await openChromium(profile.folder)
    server = await serveFolder({ folder: host.folder, host: '127.0.0.1', port: 0 })
    address = `http://localhost:${server.port}/${host.path}`
  })

  afterEach(async () => {
    await browser.close()
    await server.close()
    profile.remove()
    host.remove()
  })

  async function openPage() {
    const page = await browser.newPage()
    await page.goto(address)
    return page
  }

  it('after one visit it starts without a server, also in a newly started browser', async () => {
    const page = await openPage()
    await waitForState(page, 'ready')
    await server.close()

    await page.reload()
    expect(await versionOf(page)).toBe('one')
    expect(await latePartOf(page)).toBe('late part of one')

    await browser.close()
    browser = await openChromium(profile.folder)
    const fresh = await openPage()
    expect(await versionOf(fresh)).toBe('one')
    await waitForState(fresh, 'ready')
  })

  it('a new version waits until asked, never during a recording, in the asking tab only', async () => {
    const asking = await openPage()
    const other = await openPage()
    await waitForState(asking, 'ready')
    await waitForState(other, 'ready')
    await host.publish('two')
    await lookForUpdate(asking)
    await waitForState(asking, 'update-waiting')
    expect(await versionOf(asking)).toBe('one')

    await setRecording(asking, true)
    expect(await apply(asking)).toBe(false)
    await setRecording(asking, false)
    const reloaded = asking.waitForEvent('load')
    expect(await apply(asking)).toBe(true)
    await reloaded
    await waitForState(asking, 'ready')
    expect(await versionOf(asking)).toBe('two')

    expect(await versionOf(other)).toBe('one')
    expect(await latePartOf(other), 'the older tab still gets its own parts').toBe(
      'late part of one',
    )
    await other.reload()
    expect(await versionOf(other)).toBe('two')
  })

  it('a version that waits is offered again after a reload', async () => {
    const page = await openPage()
    await waitForState(page, 'ready')
    await host.publish('two')
    await lookForUpdate(page)
    await waitForState(page, 'update-waiting')
    await page.reload()
    await waitForState(page, 'update-waiting')
    expect(await versionOf(page)).toBe('one')
  })

  it('of three versions two are kept, and caches of other apps on the host are left alone', async () => {
    const page = await openPage()
    await waitForState(page, 'ready')
    await page.evaluate(() => caches.open('movewright /another-path/ 1a2b3c4d'))
    for (const version of ['two', 'three']) {
      await host.publish(version)
      await lookForUpdate(page)
      await waitForState(page, 'update-waiting')
      const reloaded = page.waitForEvent('load')
      expect(await apply(page)).toBe(true)
      await reloaded
      await waitForState(page, 'ready')
      expect(await versionOf(page)).toBe(version)
    }
    const names = await page.evaluate(() => caches.keys())
    expect(names.filter((name) => name.startsWith('movewright /props/ '))).toHaveLength(2)
    expect(names).toContain('movewright /another-path/ 1a2b3c4d')
  })

  it('a file that a host has changed is refused, and nothing half is kept', async () => {
    const assets = join(host.folder, host.path, 'assets')
    const script = readdirSync(assets).find((name) => name.startsWith('late-part'))
    appendFileSync(join(assets, script ?? ''), '\n// put in by the host\n')
    const page = await openPage()
    await waitForState(page, 'failed')
    expect(await stateOf(page)).toBe('failed')
    expect(await page.evaluate(() => caches.keys())).toEqual([])
  })
})
