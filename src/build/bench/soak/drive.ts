import type { Browser, CDPSession, Page } from 'playwright-core'
import { PHONE_VIEWPORT } from '../../chromium'
import { feederScript } from './feeder'
import { handLoop, RATE_HZ } from './hand-loop'
import { type Reading, read, valueIn } from './readings'

/** Readings sent at once: 10 s, far fewer than the app lets wait. */
const BURST = 10 * RATE_HZ

/** No sound: at this pace hundreds of tunes would play at once. */
const PREFERENCES = `localStorage.setItem('movewright.preferences',
  JSON.stringify({ accelSign: 1, sound: false, keepGood: false }))`

/** In the page: takes that were offered go the way of most takes of a demonstration. */
const DROP_ALL = `(async () => {
  for (let dropped = 0; ; dropped++) {
    const drop = [...document.querySelectorAll('.offered-buttons button')]
      .find((button) => button.textContent.trim() === 'Drop')
    if (drop === undefined) return dropped
    drop.click()
    await new Promise((resolve) => setTimeout(resolve, 5))
  }
})()`

export interface Stretch {
  stageMinutes: number
  recordMinutes: number
}

/** The built app on the demo library, its sensor fed at many times the speed of life. */
export class SoakedApp {
  readonly #page: Page
  readonly session: CDPSession
  /** Takes that were cut, kept in a journal, offered and dropped. */
  takes = 0

  private constructor(page: Page, session: CDPSession) {
    this.#page = page
    this.session = session
  }

  static async open(browser: Browser, url: string): Promise<SoakedApp> {
    const context = await browser.newContext({ viewport: PHONE_VIEWPORT })
    const page = await context.newPage()
    const session = await context.newCDPSession(page)
    await session.send('Performance.enable')
    await page.addInitScript(PREFERENCES)
    await page.addInitScript(feederScript(handLoop(1)))
    await page.goto(url)
    await page.getByRole('button', { name: 'Load the lantern parade demo' }).click()
    await page.locator('.gesture-card').first().waitFor({ timeout: 120_000 })
    return new SoakedApp(page, session)
  }

  /** A stretch on the stage and one of recording hands-free; read on the stage, after a rest. */
  async spend({ stageMinutes, recordMinutes }: Stretch): Promise<Reading> {
    await this.#record(recordMinutes)
    await this.#enterStage()
    await this.#feed(stageMinutes)
    await this.#page.waitForTimeout(300)
    const reading = await read(this.session)
    await this.#page.keyboard.press('Escape')
    await this.#page.getByRole('heading', { name: 'Stage' }).waitFor()
    // The stage takes its entry out of the history, which the browser does a moment later.
    await this.#page.waitForTimeout(200)
    return reading
  }

  /** Holds memory on purpose, to try the meter. */
  leak(bytes: number): Promise<void> {
    return valueIn(this.session, `void soak.leak(${bytes})`)
  }

  /** Movements that the stage has answered so far. */
  async answered(): Promise<number> {
    const text = (await this.#page.getByText(/answered since/).textContent()) ?? ''
    return Number(text.replaceAll(/[\s\u202f]/g, '').match(/^\d+/)?.[0] ?? Number.NaN)
  }

  async #enterStage(): Promise<void> {
    await this.#go('#/stage')
    await this.#page.getByRole('button', { name: 'Begin', exact: true }).click()
    const warning = this.#page.getByRole('alertdialog')
    if (await warning.isVisible()) await warning.getByRole('button', { name: 'Begin' }).click()
    await this.#page.locator('.stage-light').waitFor({ timeout: 60_000 })
    await this.#page.locator('.stage-line:empty').waitFor({ state: 'attached', timeout: 120_000 })
  }

  async #record(minutes: number): Promise<void> {
    await this.#go('#/moves')
    await this.#page.locator('.gesture-card').first().click()
    await this.#page.getByRole('link', { name: /Record/ }).click()
    await this.#listen()
    await this.#feed(minutes, () => this.#dropAll())
    await this.#page.getByRole('button', { name: /^Stop/ }).click()
    // The movement that was under way is still being cut.
    await this.#page.waitForTimeout(300)
    await this.#dropAll()
  }

  /** Whatever stands in the way is done first: a sensor to start, a take offered late. */
  async #listen(): Promise<void> {
    const listen = this.#page.getByRole('button', { name: /^Listen/ })
    const start = this.#page.getByRole('button', { name: /Start the sensor/ })
    const handsFree = this.#page.getByText('Hands-free')
    while (!(await listen.isVisible())) {
      await this.#dropAll()
      if (await start.isVisible()) await start.click()
      else if (await handsFree.isVisible()) await handsFree.click()
      await this.#page.waitForTimeout(50)
    }
    await listen.click()
  }

  async #dropAll(): Promise<void> {
    this.takes += await valueIn<number>(this.session, DROP_ALL)
  }

  async #feed(minutes: number, between = async () => {}): Promise<void> {
    const bursts = Math.ceil((minutes * 60 * RATE_HZ) / BURST)
    for (let i = 0; i < bursts; i++) {
      await valueIn(this.session, `soak.feed(${BURST})`)
      await between()
    }
  }

  async #go(hash: string): Promise<void> {
    await valueIn(this.session, `void (location.hash = ${JSON.stringify(hash)})`)
  }
}
