import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { unzipSync } from 'fflate'
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { RunningServer } from '../../src/build/static-server'
import { readLibraryFile } from '../../src/shared/format/library-file'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { performance, stillness } from './hand-player'
import { openRig, type Rig } from './rig'

const GESTURES = [
  { name: 'Raise', movement: 'raise' },
  { name: 'Ring', movement: 'ring' },
] as const
const TAKES_EACH = 5
/** Longest time between two readings of the phone, by its own clock, ms: 17 where none is late. */
const LONGEST_GAP = 'Math.max(...readings.slice(1).map((tMs, n) => tMs - readings[n]))'

/**
 * The whole way on one phone: the built app, a real browser, its own motion events. Each step goes
 * on where the one before ended.
 */
describeWithTools('from an empty start to firmware', ['chromium', 'gcc', 'make'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig
  const out = mkdtempSync(join(tmpdir(), 'movewright-main-job-'))

  beforeAll(async () => {
    server = await serveBuiltApp()
    rig = await openRig()
    await rig.open(server.url)
  })
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
    rmSync(out, { recursive: true, force: true })
  })

  const button = (name: string | RegExp) => rig.page.getByRole('button', { name }).first()
  const tap = (name: string | RegExp) => button(name).tap()
  const see = (text: string | RegExp, timeout = 10_000) =>
    rig.page.getByText(text).first().waitFor({ timeout })
  const place = (name: string) => rig.page.getByRole('link', { name, exact: true }).tap()

  /** Holds the big button while the hand performs. */
  async function recordByHolding(movement: string, seed: number): Promise<void> {
    const hold = button(/Hold while you move/)
    await hold.waitFor()
    const box = await hold.boundingBox()
    if (box === null) throw new Error('The hold button is not on the screen.')
    await rig.sensors.play(stillness(1200, seed))
    await rig.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await rig.page.mouse.down()
    await rig.sensors.play(performance(movement, seed, 300))
    await rig.sensors.play(stillness(400, seed))
    await rig.page.mouse.up()
  }

  async function download(action: string): Promise<Uint8Array> {
    const [file] = await Promise.all([rig.page.waitForEvent('download'), tap(action)])
    return readFileSync(await file.path())
  }

  /** What the answer on the screen waited for the rest, ms; infinite if it is not this gesture's. */
  async function waitOfAnswer(name: string): Promise<number> {
    const named = rig.page.getByRole('heading', { name, exact: true })
    const came = named.waitFor({ timeout: 5000 }).then(
      () => true,
      () => false,
    )
    if (!(await came)) return Number.POSITIVE_INFINITY
    const wait = await rig.page.getByText(/until the rest was sure/).textContent()
    return Number(/: (\d+)\sms until/.exec(wait ?? '')?.[1])
  }

  it('starts a library, finds the sign of the sensor and records takes of two gestures', async () => {
    await tap('Start an own library')
    await rig.page.getByLabel('Name of the library').fill('North lantern')
    await tap('Create')
    for (const [index, { name, movement }] of GESTURES.entries()) {
      await tap('Add a gesture')
      await rig.page.getByLabel('Name of the gesture').fill(name)
      await tap(/^Add$/)
      await rig.page
        .getByRole('link', { name: /Record/ })
        .first()
        .tap()
      if (index === 0) {
        await tap('Start the sensor')
        await tap('It lies flat')
        await button(/flat|Hold still/).waitFor({ state: 'detached' })
      }
      for (let take = 0; take < TAKES_EACH; take++) {
        await recordByHolding(movement, 100 * index + take)
        await tap('Keep')
        await see(`${take + 1} take${take === 0 ? '' : 's'} of ${name}`)
      }
      await place('Moves')
    }
    await see(`${GESTURES.length * TAKES_EACH} takes`)
  })

  it('cuts movements by itself when hands-free', async () => {
    await rig.page.getByText('Ring').first().tap()
    await rig.page
      .getByRole('link', { name: /Record/ })
      .first()
      .tap()
    await rig.page.getByText('Hands-free').tap()
    await tap(/Listen|hands-free/i)
    await rig.sensors.play(performance('ring', 300))
    await rig.sensors.play(stillness(1200, 300))
    // Kept at once when it looks good; on a busy computer readings are lost, and it is asked about.
    await rig.page.getByText('Take of Ring kept.').or(button('Keep')).first().waitFor()
    if (await button('Keep').isVisible()) await tap('Keep')
    await see(`${TAKES_EACH + 1} takes of Ring`)
    await tap('Stop')
    await place('Moves')
  })

  it('recognises both gestures live, with the decision soon after the movement', async () => {
    await place('Try')
    await tap(/^Start$/)
    await see('Rest a moment', 60_000)
    await rig.look(`void (window.readings = [],
      addEventListener('devicemotion', (event) => readings.push(event.timeStamp)))`)
    for (const [index, { name, movement }] of GESTURES.entries()) {
      // By the sensor's own clock: rest of 3 samples, 19 ms that conditioning looks ahead, and two
      // readings of the phone. A busy computer gives some of them late, and may spoil a movement.
      let overMs = Number.POSITIVE_INFINITY
      for (let attempt = 0; attempt < 4 && !(overMs < 0); attempt++) {
        await rig.look('void (window.readings = [])')
        await rig.sensors.play(performance(movement, 900 + index + 10 * attempt))
        await rig.sensors.play(stillness(900, 900 + index))
        const waitMs = await waitOfAnswer(name)
        overMs = waitMs - (106 + 2 * (await rig.look<number>(LONGEST_GAP)))
      }
      expect(overMs).toBeLessThan(0)
    }
    await tap('Stop')
  })

  it('measures with takes held out', async () => {
    await place('Proof')
    await rig.page.getByText('Takes', { exact: true }).tap()
    await tap(/^Measure/)
    await see(/Held-out takes understood/, 120_000)
    await see(/\d+\/11 takes/)
  })

  it('exports a library file that reads back whole', async () => {
    await place('Prop')
    const file = readLibraryFile(await download('Export library file'))
    if (!file.ok) throw new Error(file.message)
    expect(file.value.library.name).toBe('North lantern')
    expect(file.value.recordings.length).toBe(GESTURES.length * TAKES_EACH + 1)
    for (const { recording, samples } of file.value.recordings) {
      expect(recording.source).toBe('phone')
      expect(recording.device.accelSign).toBe(1)
      expect(recording.device.accelStepMps2).toBeCloseTo(0.1, 6)
      expect(samples.tMs.length).toBe(recording.sampleCount)
    }
  })

  it('exports firmware whose self-test builds and passes with one command', async () => {
    const files = unzipSync(await download('Export firmware'))
    for (const [path, bytes] of Object.entries(files)) {
      mkdirSync(dirname(join(out, path)), { recursive: true })
      writeFileSync(join(out, path), bytes)
    }
    const printed = execFileSync('make', ['test'], { cwd: out, encoding: 'utf8' })
    const [, agreed, all] = /(\d+) of (\d+) vectors agree with the phone/.exec(printed) ?? []
    expect(Number(all)).toBeGreaterThan(10)
    expect(agreed).toBe(all)
    expect(readFileSync(join(out, 'model/model.h'), 'utf8')).toMatch(/RAISE/)
  })

  it('works without the server, from memory of the first load', async () => {
    await rig.until('navigator.serviceWorker.controller !== null', 20_000)
    await server.close()
    await rig.page.reload()
    await place('Moves')
    await see(`${GESTURES.length * TAKES_EACH + 1} takes`)
  })

  it('offers the unfinished take after the browser was killed in the middle of it', async () => {
    await rig.page.getByText('Raise').first().tap()
    await rig.page
      .getByRole('link', { name: /Record/ })
      .first()
      .tap()
    await tap('Start the sensor')
    const hold = button(/Hold while you move/)
    await hold.waitFor()
    const box = (await hold.boundingBox())!
    await rig.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await rig.page.mouse.down()
    await rig.sensors.play(stillness(3500, 7))
    await rig.kill()
    rig = await openRig({ profile: rig.profile })
    await rig.open(server.url)
    await see(/was cut off/)
    await tap(/^Keep/)
    await see(`${GESTURES.length * TAKES_EACH + 2} takes`)
  })
})
