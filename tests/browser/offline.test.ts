import type { BrowserContext, Page } from 'playwright-core'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { serveBuiltApp } from '../support/built-app'
import { makeProfile, openChromium } from '../support/chromium'
import { describeWithTools } from '../support/tools'

describeWithTools('the built app without its server', ['chromium'], () => {
  let profile: ReturnType<typeof makeProfile>
  let browser: BrowserContext
  let server: Awaited<ReturnType<typeof serveBuiltApp>>

  beforeEach(async () => {
    profile = makeProfile()
    browser = await openChromium(profile.folder)
    server = await serveBuiltApp()
  })

  afterEach(async () => {
    await browser.close()
    await server.close()
    profile.remove()
  })

  it('starts in a newly started browser, recogniser and all, after one visit', async () => {
    const first = await open(browser, server.url)
    await first.evaluate(async () => {
      await navigator.serviceWorker.ready
    })
    const kept = await keptFiles(first)
    // One with vectors and one without: which of them is run shows only on the device.
    expect(kept.filter((url) => url.endsWith('.wasm'))).toHaveLength(2)
    await server.close()

    await first.reload()
    await first.waitForSelector('nav')
    await browser.close()
    browser = await openChromium(profile.folder)
    const again = await open(browser, server.url)
    expect(await again.locator('nav a').count()).toBe(4)
  })

  it('keeps to its own origin: nothing else is asked for', async () => {
    const page = await browser.newPage()
    const asked: string[] = []
    page.on('request', (request) => asked.push(request.url()))
    await page.goto(server.url)
    await page.waitForSelector('nav')
    expect(asked.filter((url) => !url.startsWith(server.url))).toEqual([])
  })

  it('breaks none of its own content policy on the way through the four places', async () => {
    const page = await browser.newPage()
    const errors: string[] = []
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text())
    })
    page.on('pageerror', (error) => errors.push(error.message))
    for (const place of ['moves', 'try', 'proof', 'prop']) {
      await page.goto(`${server.url}#/${place}`)
      await page.waitForSelector('nav')
    }
    expect(errors).toEqual([])
  })
})

async function open(browser: BrowserContext, url: string): Promise<Page> {
  const page = await browser.newPage()
  await page.goto(url)
  await page.waitForSelector('nav')
  return page
}

function keptFiles(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    const names = await caches.keys()
    const requests = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()))
    return requests.flat().map(({ url }) => url)
  })
}
