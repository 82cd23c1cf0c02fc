import { readdirSync, statSync, truncateSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest'
import { makeProfile } from '../support/chromium'
import { describeWithTools } from '../support/tools'
import { type PageServer, servePages } from './page-server'
import { openRig, type Rig } from './rig'

/** Each fault at every write; before it, the same writes without their guard, which lose something. */
describeWithTools('storage under faults, in a real browser', ['chromium'], () => {
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
  beforeEach(async () => {
    rig = await openRig()
    await rig.open(server.pageUrl('faults.html'))
    await rig.until('window.faultsReady')
  })
  afterEach(async () => {
    await rig.close()
    rig.profile.remove()
  })

  const look = <T>(expression: string) => rig.look<T>(expression)

  async function another(query = ''): Promise<Page> {
    const page = await rig.context.newPage()
    await page.goto(server.pageUrl('faults.html') + query)
    return page
  }
  const ready = (page: Page) => page.waitForFunction('window.faultsReady')

  it('a full disk at any write of an import leaves all of it or nothing', async () => {
    await look('faults.failAt("full", 4)')
    expect(await look('faults.careless.addLibrary("careless")')).toBe('storage/full')
    await look('faults.heal()')
    expect(await look('faults.takesIn("careless")'), 'a part without one transaction').toBe(1)

    for (let n = 1; ; n++) {
      await look(`faults.failAt("full", ${n})`)
      const added = await look<{ ok: boolean; code?: string }>(`faults.addLibrary("at-${n}")`)
      if (!(await look('faults.heal()'))) {
        expect(n, 'every write was hit: one library, three takes, three chunks').toBe(8)
        expect(await look(`faults.takesIn("at-${n}")`)).toBe(3)
        break
      }
      expect(added).toMatchObject({ ok: false, code: 'storage/full' })
      expect(await look(`faults.takesIn("at-${n}")`)).toBe(null)
    }
  })

  it('an import that the platform aborts at any write is all there nevertheless', async () => {
    await look('faults.failAt("aborted", 2)')
    expect(await look('faults.careless.record("careless")'), 'a second without another try').toBe(
      180,
    )
    for (let n = 1; ; n++) {
      await look(`faults.failAt("aborted", ${n})`)
      const added = await look<object>(`faults.addLibrary("at-${n}")`)
      const fired = await look('faults.heal()')
      expect(added).toMatchObject({ ok: true })
      expect(await look(`faults.takesIn("at-${n}")`)).toBe(3)
      if (!fired) break
    }
  })

  it.each(['full', 'aborted'] as const)(
    'a recording loses nothing when storage is %s at any of its writes',
    async (fault) => {
      for (let n = 1; ; n++) {
        await look(`faults.failAt("${fault}", ${n})`)
        const id = await look<string>('faults.begin()')
        await look('faults.play(3200)')
        const early = await look<{ ok: boolean; code?: string; value?: number }>('faults.finish()')
        const fired = await look('faults.heal()')
        if (fault === 'full' && fired) {
          expect(early).toMatchObject({ ok: false, code: 'storage/full' })
          expect(await look<string[]>('faults.troubles')).toContain('storage/full')
        }
        // Room again: what waited in memory is stored.
        const finished = early.ok
          ? early
          : await look<{ ok: boolean; value?: number }>('faults.finish()')
        expect(finished).toMatchObject({ ok: true, value: 192 })
        expect(await look(`faults.stored('${id}')`), `write ${n}`).toBe(192)
        if (!fired) {
          expect(n).toBeGreaterThan(5)
          break
        }
      }
    },
  )

  it('after a full disk and a kill, what was written before is offered', async () => {
    await look('faults.failAt("full", 4)')
    await look('faults.begin()')
    await look('faults.play(4200)')
    expect(await look('faults.finish()')).toMatchObject({ ok: false, code: 'storage/full' })
    await rig.kill()
    rig = await openRig({ profile: rig.profile })
    await rig.open(server.pageUrl('faults.html'))
    await rig.until('window.faultsReady')
    const left = await look<number[]>(
      'faults.store.unfinished().then((all) => all.map(({ samples }) => samples.tMs.length))',
    )
    expect(left).toHaveLength(1)
    expect(left[0]).toBeGreaterThan(120)
  })

  it('a database that the browser deletes under a recording gets all of it again', async () => {
    const { origin } = new URL(server.pageUrl('faults.html'))
    const id = await look<string>('faults.begin()')
    await look('faults.play(2500)')
    await rig.session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' })
    await rig.until('faults.news.includes("evicted")')
    expect(
      await look('faults.store.unfinished().then((all) => all.length)'),
      'in the database alone, the recording is gone',
    ).toBe(0)
    await look('faults.play(1500)')
    expect(await look('faults.finish()')).toMatchObject({ ok: true, value: 240 })
    expect(await look(`faults.stored('${id}')`)).toBe(240)
    expect(await look('faults.takesIn("parade")')).toBe(1)
  })

  it('a deletion asked for elsewhere waits for the recording, and is told as such', async () => {
    const id = await look<string>('faults.begin()')
    await look('faults.play(1500)')
    const other = await another('?wait')
    const deleted = other.evaluate(
      () =>
        new Promise((resolve) => {
          const request = indexedDB.deleteDatabase('movewright')
          request.onsuccess = () => resolve('deleted')
        }),
    )
    await look('faults.play(1000)')
    expect(await look('faults.finish()')).toMatchObject({ ok: true, value: 150 })
    expect(await deleted).toBe('deleted')
    await rig.until('faults.news.includes("evicted")')
    expect(await look<string[]>('faults.news')).not.toContain(expect.stringContaining('superseded'))
    expect(await look(`faults.stored('${id}')`)).toBe(0)
    expect(await look('faults.store.putLibrary(faults.library)')).toMatchObject({ ok: true })
  })

  it('of two tabs one writes; the other reads and says so', async () => {
    await rig.until('faults.news.includes("writes")')
    const other = await another()
    await ready(other)
    await other.waitForFunction('faults.news.includes("reads")')
    expect(await other.evaluate('faults.takesIn("parade")')).toBe(0)
    expect(await other.evaluate('faults.addLibrary("second")')).toMatchObject({
      ok: false,
      code: 'storage/reader',
      message: expect.stringMatching(/^Another tab of Movewright is the one that stores/),
    })

    await look('faults.begin()')
    await look('faults.play(1200)')
    expect(await other.evaluate('faults.store.takePen()')).toBe('busy')
    expect(await look('faults.finish()')).toMatchObject({ ok: true })
    expect(await other.evaluate('faults.store.takePen()')).toBe('here')
    expect(await other.evaluate('faults.addLibrary("second")')).toMatchObject({ ok: true })
    expect(await look('faults.addLibrary("third")')).toMatchObject({ code: 'storage/reader' })
    // The pen falls back when its tab is gone.
    await other.close()
    await rig.until('faults.news.at(-1) === "writes"')
    expect(await look('faults.addLibrary("third")')).toMatchObject({ ok: true })
  })

  it('without one writer, a tab stores its older view over what another has stored', async () => {
    const other = await another('?wait')
    await look('faults.store.putLibrary({ ...faults.library, name: "Renamed" })')
    // Straight into the database, as a tab without the pen's guard would.
    await other.evaluate(async () => {
      const db = await new Promise<IDBDatabase>((resolve) => {
        const request = indexedDB.open('movewright')
        request.onsuccess = () => resolve(request.result)
      })
      const { library } = window.faults
      const put = db
        .transaction('libraries', 'readwrite')
        .objectStore('libraries')
        .put({ id: library.id, deletedAt: null, library: { ...library, gestures: [] } })
      await new Promise((resolve) => {
        put.onsuccess = resolve
      })
      db.close()
    })
    expect(
      await look('faults.store.listLibraries().then(([one]) => one.name)'),
      'the new name is lost',
    ).toBe('Night parade')
  })

  it('a tab that is asleep loses the pen to the one in front', async () => {
    await rig.until('faults.news.includes("writes")')
    const other = await another()
    await ready(other)
    await other.waitForFunction('faults.news.includes("reads")')
    await rig.session.send('Runtime.enable')
    await rig.session.send('Debugger.enable')
    await rig.session.send('Debugger.pause')
    void rig.look('1').catch(() => undefined)
    expect(await other.evaluate('faults.store.takePen()')).toBe('here')
    expect(await other.evaluate('faults.addLibrary("second")')).toMatchObject({ ok: true })
    await rig.session.send('Debugger.disable')
    await rig.until('faults.news.at(-1) === "reads"')
  })

  it('an old tab gives way to a newer version once its recording is stored', async () => {
    await rig.page.goto(`${server.pageUrl('faults.html')}?steps=1`)
    await rig.page.evaluate(
      () =>
        new Promise((resolve) => {
          indexedDB.deleteDatabase('movewright').onsuccess = resolve
        }),
    )
    await rig.page.reload()
    await rig.until('window.faultsReady')
    const id = await look<string>('faults.begin()')
    await look('faults.play(1500)')
    const newer = await another()
    await newer.waitForFunction('faults.news.some((one) => one.startsWith("blocked: "))')
    await look('faults.play(1000)')
    expect(await look('faults.finish()')).toMatchObject({ ok: true, value: 150 })
    await ready(newer)
    expect(await newer.evaluate(`faults.stored('${id}')`)).toBe(150)
    expect(await look<string[]>('faults.news')).toContainEqual(
      expect.stringMatching(/^superseded: .*reload this page/),
    )
  })

  it('an old tab without that guard holds the newer version up for ever', async () => {
    await rig.page.goto(`${server.pageUrl('faults.html')}?wait`)
    await rig.until('window.faultsReady')
    await rig.page.evaluate(
      () =>
        new Promise((resolve) => {
          indexedDB.deleteDatabase('movewright').onsuccess = resolve
        }),
    )
    expect(await look('faults.careless.keepOpen()')).toBe(1)
    const newer = await another()
    await newer.waitForFunction('faults.news.some((one) => one.startsWith("blocked: "))')
    await new Promise((resolve) => setTimeout(resolve, 1000))
    expect(await newer.evaluate('window.faultsReady')).toBeUndefined()
  })

  /** Cuts the last record of the browser's log, as a kill in the middle of a write does. */
  function tearLog(): void {
    const folder = join(rig.profile.folder, 'Default', 'IndexedDB')
    const [database] = readdirSync(folder).filter((name) => name.endsWith('.leveldb'))
    const [log] = readdirSync(join(folder, database!)).filter((name) => name.endsWith('.log'))
    const path = join(folder, database!, log!)
    truncateSync(path, statSync(path).size - 10)
  }

  async function killAndOpen(query: string): Promise<void> {
    await rig.kill()
    rig = await openRig({ profile: rig.profile })
    await rig.open(server.pageUrl('faults.html') + query)
    await rig.until('window.faultsReady')
  }

  it('a log torn by a kill costs nothing but what was being written', async () => {
    await look('faults.addLibrary("before")')
    await look('faults.addLibrary("torn")')
    await rig.kill()
    tearLog()
    rig = await openRig({ profile: rig.profile })
    await rig.open(server.pageUrl('faults.html'))
    await rig.until('window.faultsReady')
    expect(await look('faults.takesIn("before")')).toBe(3)
    expect(await look('faults.addLibrary("after")')).toMatchObject({ ok: true })
    await killAndOpen('')
    expect(await look('faults.takesIn("before")')).toBe(3)
    expect(await look('faults.takesIn("after")')).toBe(3)
  })

  it('without a new log the browser deletes everything at the start after the next', async () => {
    await rig.page.goto(`${server.pageUrl('faults.html')}?wait`)
    await rig.until('window.faultsReady')
    await look('faults.careless.record("a")')
    await rig.kill()
    tearLog()
    rig = await openRig({ profile: rig.profile })
    await rig.open(`${server.pageUrl('faults.html')}?wait`)
    await rig.until('window.faultsReady')
    expect(await look('faults.careless.seconds()')).toBeGreaterThan(0)
    await look('faults.careless.append("a", 9)')
    await killAndOpen('?wait')
    // The first call may still be told of an internal error; what it found is deleted by then.
    const again = 'faults.careless.seconds().catch(() => faults.careless.seconds())'
    expect(await look(again)).toBe(0)
  })
})
