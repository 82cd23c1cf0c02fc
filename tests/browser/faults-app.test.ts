import { appendFileSync, cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { DIST } from '../../src/build/paths'
import { buildServiceWorker } from '../../src/build/service-worker'
import { type RunningServer, serveFolder } from '../../src/build/static-server'
import { describeWithTools } from '../support/tools'
import { openRig, type Rig } from './rig'

/** How long a hand goes on with its movement after a newer version came, ms. */
const GOES_ON_MS = 1500
const goOn = () => new Promise((resolve) => setTimeout(resolve, GOES_ON_MS))

/** What the person sees of faults, in the built app with the simulated phone. */
describeWithTools('the built app under faults', ['chromium'], () => {
  let folder: string
  let server: RunningServer
  let address: string
  let rig: Rig

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'movewright-host-'))
    cpSync(DIST, folder, { recursive: true })
    server = await serveFolder({ folder, host: '127.0.0.1', port: 0 })
    address = `http://localhost:${server.port}/`
    rig = await openRig({ sensors: [] })
    await rig.open(address)
  })
  afterEach(async () => {
    await rig.close()
    rig.profile.remove()
    await server.close()
    rmSync(folder, { recursive: true, force: true })
  })

  const button = (name: string | RegExp) => rig.page.getByRole('button', { name }).first()
  const see = (text: string | RegExp, timeout = 30_000) =>
    rig.page.getByText(text).first().waitFor({ timeout })

  async function startLibrary(): Promise<void> {
    await button('Start an own library').tap()
    await rig.page.getByLabel('Name of the library').fill('North lantern')
    await button('Create').tap()
    await see('No gestures yet')
    // The app goes there once all is stored; whoever is elsewhere by then is fetched back.
    await rig.until(`location.hash === '#/moves'`)
  }

  async function recordBackground(): Promise<void> {
    await rig.page.goto(`${address}#/background`)
    await button('Use the simulated phone').tap()
    await button(/Record background|Start recording/).tap()
    await button('Stop').waitFor()
  }

  /** Another build in the place of the first, as an upload would put it, and found by the browser. */
  async function publishNewer(moreOfWorker = ''): Promise<void> {
    const [script] = readdirSync(join(folder, 'assets')).filter((name) => name.endsWith('.js'))
    appendFileSync(join(folder, 'assets', script!), '\n// newer\n')
    await buildServiceWorker(folder)
    appendFileSync(join(folder, 'service-worker.js'), moreOfWorker)
    await rig.look('navigator.serviceWorker.ready.then((one) => one.update()).then(() => true)')
  }

  /** Of the only recording, finished or cut off: time recorded, and time since it began, ms. */
  async function recorded(): Promise<{ durationMs: number; sinceMs: number }> {
    const { recordedAt, durationMs } = await rig.look<{ recordedAt: string; durationMs: number }>(
      `new Promise((resolve, reject) => {
        const opening = indexedDB.open('movewright')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const db = opening.result
          const tx = db.transaction(['recordings', 'journals', 'chunks'])
          const all = ['recordings', 'journals', 'chunks'].map((name) => tx.objectStore(name).getAll())
          tx.oncomplete = () => {
            db.close()
            const [finished, cutOff, chunks] = all.map(({ result }) => result)
            const [{ recordedAt }] = [...finished, ...cutOff]
            resolve({ recordedAt, durationMs: chunks.at(-1).tMs.at(-1) })
          }
        }
      })`,
    )
    return { durationMs, sinceMs: Date.now() - Date.parse(recordedAt) }
  }

  it('a newer version waits for the end of a recording, which is then kept', async () => {
    await rig.until('navigator.serviceWorker.controller !== null', 30_000)
    await startLibrary()
    await recordBackground()
    await publishNewer()
    await rig.until(
      'navigator.serviceWorker.getRegistration().then((one) => one.waiting !== null)',
      30_000,
    )
    await rig.look('window.same = true')
    await goOn()
    expect(await rig.page.getByText('A newer version is ready').count()).toBe(0)
    await button('Stop').tap()
    await see(/Background kept/)
    expect(
      (await recorded()).durationMs,
      'the hand goes on, and so does the recording',
    ).toBeGreaterThan(GOES_ON_MS)
    await see('A newer version is ready')
    expect(await rig.look('window.same'), 'no reload by itself').toBe(true)
    await button('Update').tap()
    await rig.until('window.same === undefined && document.querySelector("nav")', 30_000)
    await rig.page.goto(`${address}#/background`)
    await see(/1 recording,/)
  })

  it('taken over at once, a newer version ends the recording, and what the hand does then is lost', async () => {
    await rig.until('navigator.serviceWorker.controller !== null', 30_000)
    await startLibrary()
    await recordBackground()
    // Neither worker nor page asks, as is usual where nothing is being recorded.
    await rig.look(
      `navigator.serviceWorker.addEventListener('controllerchange', () => location.reload())`,
    )
    await rig.look('window.same = true')
    await publishNewer(`self.addEventListener('install', () => self.skipWaiting())`)
    await rig.until('window.same === undefined && document.querySelector("nav")', 30_000)
    await goOn()
    await rig.page.goto(`${address}#/moves`)
    await see(/was cut off; .* of it are there/)
    const { durationMs, sinceMs } = await recorded()
    expect(sinceMs - durationMs).toBeGreaterThan(GOES_ON_MS)
  })

  it('a database deleted under the open app is said, and gestures come back from memory', async () => {
    await startLibrary()
    await button('Add a gesture').tap()
    await rig.page.getByLabel('Name of the gesture').fill('Raise')
    await button(/^Add$/).tap()
    await see('Record takes')
    const { origin } = new URL(address)
    await rig.session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' })
    await see(/The browser deleted what was stored here/)
    await rig.page.goto(address)
    await rig.page.reload()
    await see('Raise has no takes yet')
  })

  it('a database deleted between two visits is said at the next start', async () => {
    await startLibrary()
    const { origin } = new URL(address)
    await rig.page.goto('about:blank')
    await rig.session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' })
    await rig.page.goto(address)
    await see(/deleted what was stored here since the last visit. Restore it from a backup/)
  })

  it('a second tab says that it only shows, and takes over on a tap', async () => {
    await startLibrary()
    const other = await rig.context.newPage()
    await other.goto(address)
    await other.getByText('Open in another tab, which stores.').waitFor()
    await other.getByRole('button', { name: 'Store here' }).tap()
    await see('Open in another tab, which stores.')
    await other.getByText('Open in another tab').waitFor({ state: 'detached' })
  })

  it('a recogniser that the browser ends in the middle of a measurement is replaced, and the measurement is finished', async () => {
    await button('Load the lantern parade demo').tap()
    await see(/\d+ takes/, 90_000)
    await rig.page.goto(`${address}#/proof`)
    await button(/^Measure/).tap()
    await expect.poll(() => rig.page.workers().length, { timeout: 20_000 }).toBeGreaterThan(0)
    // In the middle of the work: each has begun, which its lock tells.
    const locks = () =>
      rig.look<number>(
        `navigator.locks.query().then(({ held }) =>
          held.filter(({ name }) => name.startsWith('movewright worker')).length)`,
      )
    await expect.poll(locks, { timeout: 20_000 }).toBeGreaterThanOrEqual(rig.page.workers().length)
    let ended = 0
    for (const worker of rig.page.workers()) {
      worker.on('close', () => {
        ended += 1
      })
      // Carried out as soon as the worker pauses; it ends without a word to the page.
      void worker.evaluate(() => self.close()).catch(() => undefined)
    }
    await see(/Held-out takes understood/, 240_000)
    expect(ended).toBeGreaterThan(0)
  }, 360_000)
})
