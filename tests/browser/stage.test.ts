import { afterAll, beforeAll, expect, it } from 'vitest'
import type { RunningServer } from '../../src/build/static-server'
import { serveBuiltApp } from '../support/built-app'
import { describeWithTools } from '../support/tools'
import { performance, stillness } from './hand-player'
import { openRig, type Rig } from './rig'

/**
 * Keeps every worker that the page starts, so that one can be ended under it as by the system, and
 * every text that the stage showed, however shortly, and every lock that keeps the screen on.
 */
const WATCH = `
  window.started = []
  window.Worker = class extends Worker {
    constructor(...parts) {
      super(...parts)
      started.push(this)
    }
  }
  window.locks = []
  const request = navigator.wakeLock.request.bind(navigator.wakeLock)
  navigator.wakeLock.request = async (type) => {
    const lock = await request(type)
    locks.push(lock)
    return lock
  }
  window.shown = []
  new MutationObserver(() => {
    const text = document.querySelector('.stage')?.innerText ?? ''
    if (text !== shown.at(-1)) shown.push(text)
  }).observe(document, { childList: true, subtree: true, characterData: true })
`

/** The stage in front of a hall: what a hand does, what breaks, and how it is left. */
describeWithTools('the stage in a real browser', ['chromium'], () => {
  let server: RunningServer & { url: string }
  let rig: Rig

  beforeAll(async () => {
    server = await serveBuiltApp()
    rig = await openRig()
    await rig.page.addInitScript(WATCH)
    await rig.open(server.url)
    await button('Load the lantern parade demo').tap()
    await rig.page.locator('.gesture-card').first().waitFor({ timeout: 60_000 })
  })
  afterAll(async () => {
    await rig?.close()
    rig?.profile.remove()
    await server?.close()
  })

  const button = (name: string | RegExp) => rig.page.getByRole('button', { name }).first()
  const see = (text: string | RegExp, timeout = 20_000) =>
    rig.page.getByText(text).first().waitFor({ timeout })
  const lit = () =>
    rig.look<string>(`document.querySelector('.stage-light')?.style.backgroundColor ?? ''`)
  const shown = (text: RegExp) => rig.until(`shown.some((one) => ${text}.test(one))`, 30_000)
  /** Waits until the stage has said what is gone, and that it is back. */
  const recovered = async (what: RegExp) => {
    await shown(what)
    await shown(/Back after/)
    await rig.look('void shown.splice(0)')
  }
  const ON = `document.querySelector('.stage-light') !== null`

  /** Rings until the name stands in the light; a busy computer spoils some performances. */
  async function ringUntilSeen(seed: number): Promise<void> {
    for (let attempt = 0; ; attempt++) {
      await rig.sensors.play(performance('ring', seed + attempt))
      await rig.sensors.play(stillness(900, seed + attempt))
      if (await rig.page.locator('.stage-name', { hasText: 'Ring' }).isVisible()) return
      if (attempt === 7) throw new Error('Ring was not recognised in eight tries.')
    }
  }

  it('is reached from Try and warns of flashing light before anything shines', async () => {
    await rig.page.getByRole('link', { name: 'Try', exact: true }).tap()
    await rig.page.getByRole('link', { name: /^Stage/ }).tap()
    await button(/^Begin$/).tap()
    await see('Light that changes')
    expect(await rig.look(ON)).toBe(false)
    await button(/^Begin$/).tap()
    await rig.until(ON, 60_000)
  })

  it('answers a movement with its light and its name, and counts it', async () => {
    // The light is there before the recogniser is trained; the line goes when it listens.
    await rig.until(`document.querySelector('.stage-line').textContent === ''`, 60_000)
    const atRest = await lit()
    await ringUntilSeen(40)
    expect(await lit()).not.toBe(atRest)
  })

  it('takes the whole screen', async () => {
    expect(await rig.look('document.fullscreenElement !== null')).toBe(true)
  })

  it('keeps the screen on, and again after the system took that away', async () => {
    await rig.until('locks.at(-1)?.released === false')
    const before = await rig.look<number>('locks.length')
    await rig.look('locks.at(-1).release()')
    await rig.look(`void document.dispatchEvent(new Event('visibilitychange'))`)
    await rig.until(`locks.length === ${before + 1} && !locks.at(-1).released`)
  })

  it('is not left by a stray touch, nor by a swipe back, however often', async () => {
    await rig.page.touchscreen.tap(190, 300)
    for (let swipe = 0; swipe < 3; swipe++) {
      await rig.look('void history.back()')
      await rig.until(`location.hash === '#/stage'`)
    }
    await rig.look('void history.go(-2)')
    await new Promise((resolve) => setTimeout(resolve, 500))
    expect(await rig.look(ON)).toBe(true)
    expect(await rig.look('location.hash')).toBe('#/stage')
    await button(/Leave the stage/).waitFor()
  })

  it('starts the recogniser again when its worker is gone without a word', async () => {
    expect(await rig.look('started.length')).toBeGreaterThan(0)
    await rig.look('started.forEach((worker) => worker.terminate())')
    await recovered(/The recogniser stopped/)
    expect(await rig.look(ON)).toBe(true)
    await ringUntilSeen(50)
  })

  it('starts the recogniser again when its worker crashes', async () => {
    for (const worker of rig.page.workers()) {
      const crash = `void setTimeout(() => { throw new Error('out of memory') })`
      await Promise.race([worker.evaluate(crash), new Promise((end) => setTimeout(end, 1000))])
    }
    await recovered(/The recogniser stopped/)
    await ringUntilSeen(60)
  })

  it('waits for a sensor that was withdrawn and goes on when it is back', async () => {
    await rig.sensors.disable()
    await see(/The motion sensor is silent/)
    await new Promise((resolve) => setTimeout(resolve, 3000))
    expect(await rig.look(ON)).toBe(true)
    await rig.sensors.enable()
    await recovered(/The motion sensor is silent/)
    await ringUntilSeen(70)
  })

  it('is left by holding the ring for two seconds, not shorter', async () => {
    const hold = async (ms: number) => {
      await rig.page.touchscreen.tap(190, 300)
      await button(/Leave the stage/).hover()
      await rig.page.mouse.down()
      await see('Keep holding')
      await new Promise((resolve) => setTimeout(resolve, ms))
      await rig.page.mouse.up()
    }
    await hold(900)
    expect(await rig.look(ON)).toBe(true)
    await hold(2400)
    await see('This evening')
    await rig.until('document.fullscreenElement === null')
    await rig.until('locks.at(-1).released')
    await see(/\d+ movements? answered since/)
  })

  it('keeps the tally over a reload, as counts and nothing else', async () => {
    const before = await rig.page.locator('.stage-tally').textContent()
    await rig.page.reload()
    await see('This evening')
    expect(await rig.page.locator('.stage-tally').textContent()).toBe(before)
    const stored = await rig.look<string>(`localStorage.getItem('movewright.stage-tally')`)
    expect(stored).not.toMatch(/tester|T0\d|name/i)
  })

  it('asks visitors for a movement, counts down, and tells what came', async () => {
    await rig.page.getByText('Cards: try this one').tap()
    await button(/^Begin$/).tap()
    await button(/^Begin$/).tap()
    await see('Try this movement', 60_000)
    await button('Another one').tap()
    await button('Ready').tap()
    await rig.page.locator('.stage-ask', { hasText: 'Now' }).waitFor()
    for (const second of [/\b3\n/, /\b2\n/, /\b1\n/]) await shown(second)
    await rig.sensors.play(performance('ring', 81))
    await rig.sensors.play(stillness(900, 81))
    await shown(/was asked for/)
  })

  it('is left by Escape at a desk, back to where it was set up', async () => {
    await rig.page.keyboard.press('Escape')
    await see('This evening')
    await see(/1 turn of visitors/)
    await rig.until(`location.hash === '#/stage'`)
    await rig.page.getByRole('button', { name: 'Back' }).tap()
    await rig.until(`location.hash === '#/try'`)
  })
})
