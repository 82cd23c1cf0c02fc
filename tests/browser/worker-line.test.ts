import type { BrowserContext, Page } from 'playwright-core'
import { createServer, type ViteDevServer } from 'vite'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { repositoryPath } from '../../src/build/paths'
import { makeProfile, openChromium } from '../support/chromium'
import { describeWithTools } from '../support/tools'
import type {} from './pages/worker-line'

describeWithTools('queue before a real worker', ['chromium'], () => {
  let server: ViteDevServer
  let context: BrowserContext
  let page: Page
  const profile = makeProfile()

  beforeAll(async () => {
    server = await createServer({
      configFile: false,
      root: repositoryPath('.'),
      cacheDir: `${profile.folder}/vite`,
      optimizeDeps: { include: ['comlink'] },
      server: { port: 0, hmr: false },
      logLevel: 'error',
    })
    await server.listen()
    context = await openChromium(profile.folder)
    page = await context.newPage()
    const address = server.resolvedUrls?.local[0]
    await page.goto(`${address}tests/browser/pages/worker-line.html`)
    await page.waitForFunction(() => window.trial !== undefined)
  })
  afterAll(async () => {
    await context?.close()
    await server?.close()
    profile.remove()
  })

  const trial = (name: string) => page.evaluate((which) => window.trial?.(which), name)

  it('answers calls in the order they were made, one at a time', async () => {
    expect(await trial('order')).toEqual(['slow', 'a', 'b'])
  })
  it('hears no report behind the answer, which would show a finished job as running for ever', async () => {
    expect(await trial('lateReport')).toEqual({ bare: ['in time', 'late'], guarded: ['in time'] })
  })
  it('ends the worker under an aborted call, and gives those behind a fresh one', async () => {
    expect(await trial('abortRunning')).toEqual({
      running: 'worker/aborted',
      behind: 'next after 1',
      started: 2,
    })
  })
  it('drops an aborted call from the queue without touching the worker', async () => {
    expect(await trial('abortQueued')).toEqual({
      first: 'worker/aborted',
      running: 'slow',
      behind: 'next after 1',
      started: 1,
    })
  })
  it('gives up a call that takes too long and starts anew', async () => {
    expect(await trial('timeout')).toEqual({ stuck: 'worker/timeout', after: 'next after 1' })
  })
  it('answers the open call when the worker crashes, and goes on', async () => {
    expect(await trial('crash')).toEqual({ crashed: 'worker/crashed', behind: 'next after 1' })
  })
  it('answers the open call when the worker vanishes without a word, which nothing else would', async () => {
    expect(await trial('vanishSilently')).toBe('still waiting')
    expect(await trial('vanish')).toEqual({ vanished: 'worker/crashed', behind: 'next after 1' })
  })
  it('notices the end of a worker that is busy with its first call, and answers that call', async () => {
    expect(await trial('endedInFirstCall')).toEqual(['worker/crashed', 'next after 1'])
  })
  it('gives up a worker that is ended before it begins, and none that is only slow to answer', async () => {
    expect(await trial('neverBegins')).toEqual({ first: 'worker/crashed', behind: 'slow' })
  })
  it('answers every call when the worker cannot be loaded', async () => {
    expect(await trial('cannotLoad')).toEqual(['worker/crashed', 'worker/crashed'])
  })
  it('answers with a failure when the service throws, and goes on with the same worker', async () => {
    expect(await trial('bug')).toEqual(['worker/bug', 'next after 1'])
  })
  it('ends an idle worker and starts one again when needed', async () => {
    expect(await trial('idle')).toEqual({ together: 1, later: 2 })
  })
  it('answers all calls when it is disposed of', async () => {
    expect(await trial('dispose')).toEqual(['worker/aborted', 'worker/aborted', 'worker/aborted'])
  })
})
