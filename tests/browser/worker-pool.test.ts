import type { BrowserContext, Page } from 'playwright-core'
import { createServer, type ViteDevServer } from 'vite'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { repositoryPath } from '../../src/build/paths'
import { buildCore } from '../../src/build/wasm'
import { makeProfile, openChromium } from '../support/chromium'
import { describeWithTools } from '../support/tools'
import type {} from './pages/worker-pool'

describeWithTools('a job in parts on a pool of real workers', ['chromium'], () => {
  let server: ViteDevServer
  let context: BrowserContext
  let page: Page
  const programs = new Set<string>()
  const profile = makeProfile()

  beforeAll(async () => {
    await buildCore()
    server = await createServer({
      configFile: false,
      root: repositoryPath('.'),
      cacheDir: `${profile.folder}/vite`,
      optimizeDeps: { include: ['comlink', 'valibot', 'fflate'] },
      worker: { format: 'es' },
      server: { port: 0, hmr: false },
      logLevel: 'error',
    })
    await server.listen()
    context = await openChromium(profile.folder)
    context.on('request', (request) => {
      // With a query it is the module that knows the address.
      const name = /core[\w-]*\.wasm$/.exec(request.url())?.[0]
      if (name !== undefined) programs.add(name)
    })
    page = await context.newPage()
    await page.goto(`${server.resolvedUrls?.local[0]}tests/browser/pages/worker-pool.html`)
    await page.waitForFunction(() => window.poolTrial !== undefined, undefined, { timeout: 60_000 })
  })
  afterAll(async () => {
    await context?.close()
    await server?.close()
    profile.remove()
  })

  const trial = (name: string) => page.evaluate((which) => window.poolTrial?.(which), name)

  it('has a worker for each core, one where none is known, four at most', async () => {
    expect(await trial('sizes')).toEqual([1, 1, 1, 2, 4, 4])
  })
  it('gives the same evaluation and grip to the digit with one, two and three workers', async () => {
    expect(await trial('same')).toEqual({ answers: 1, ok: true })
  }, 300_000)
  it('fetches the build with vectors, as this browser has them, and not the other', () => {
    expect([...programs]).toEqual(['core-simd.wasm'])
  })
  it('tells one progress, which never goes back and ends at all', async () => {
    expect(await trial('progress')).toEqual({ rises: true, last: 1 })
  }, 120_000)
  it('does the part of a killed worker again in a fresh one, and the answer is the same', async () => {
    expect(await trial('killed')).toEqual({ same: true, fresh: 1 })
  }, 180_000)
  it('ends every worker that is at work when it is cancelled, and works again afterwards', async () => {
    expect(await trial('cancelled')).toEqual({
      code: 'worker/aborted',
      busyEnded: true,
      again: true,
    })
  }, 180_000)
  it('lets the further workers go when there is nothing to do, and keeps the first a while', async () => {
    expect(await trial('released')).toEqual({ during: 3, after: 1 })
  }, 120_000)
})
