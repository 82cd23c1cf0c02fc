import type { Locator } from 'playwright-core'
import { performance, stillness } from './hand-player'
import type { Rig } from './rig'

/*
 * Times of a user's acts, s: the keystroke-level model (Card, Moran, Newell, CACM 23(7), 1980). M: deciding
 * what to do. P: bringing the finger there. K: the tap. What the phone takes to answer counts as it is
 * set up: `phase.ts` and `movement-watch.ts`. Not counted: reading texts to their end.
 */
const MENTAL_S = 1.35
const POINT_S = 1.1
const KEY_S = 0.2
/** Laying the phone on a table, and taking it up again: measured by nobody, estimated. */
const LAY_DOWN_S = 2
const TAKE_UP_S = 1

/** For a busy computer. */
const LONGEST_MS = 40_000
/** What the app says of a take in which readings are missing. */
const LATE_READINGS = /The sensor paused|There was a stop in between/

/** A tester with a phone: counts taps and the seconds of their own acts. */
export class TesterUser {
  taps = 0
  seconds = 0
  #seed = 40

  constructor(readonly rig: Rig) {}

  button(name: string | RegExp) {
    return this.rig.page.getByRole('button', { name }).first()
  }

  see(text: string | RegExp, timeout = LONGEST_MS): Promise<void> {
    return this.rig.page.getByText(text).first().waitFor({ timeout })
  }

  async tap(name: string | RegExp): Promise<void> {
    await this.button(name).tap({ timeout: LONGEST_MS })
    this.taps++
    this.seconds += MENTAL_S + POINT_S + KEY_S
  }

  /** Lays the phone down until the app has seen what it asks for. */
  async layFlat(): Promise<void> {
    await this.see('It goes on by itself')
    await this.button('Start').waitFor({ timeout: LONGEST_MS })
    this.seconds += LAY_DOWN_S + 1.3 + TAKE_UP_S
  }

  /** Waits for the sign to move, and moves; then holds still until the answer. */
  async perform(movement: string, name: string): Promise<void> {
    this.#seed++
    const { sensors } = this.rig
    await sensors.play(stillness(200, this.#seed))
    await this.see(`Now: ${name}!`)
    const moves = performance(movement, this.#seed, 200)
    await sensors.play(moves)
    await sensors.play(stillness(1100, this.#seed))
    // Getting ready 1.6 s; the movement; 0.6 s and 0.4 s of rest until it is over and stored.
    this.seconds += 1.6 + (moves.tMs.at(-1) ?? 0) / 1000 + 1
  }

  /** Takes counted as done on the screen. */
  async done(): Promise<number> {
    const text = await this.rig.page.getByText(/\d+ of \d+ done/).textContent()
    return Number(/^\s*(\d+)/.exec(text ?? '')?.[1])
  }

  /** Waits until so many are done. */
  async reach(count: number): Promise<void> {
    const kept = this.rig.page.getByText(new RegExp(`^${count} of \\d+ done$`))
    const over = this.rig.page.getByRole('heading', { name: 'Thank you' })
    await this.keepUntil(kept.or(over))
  }

  /** Waits for what follows a take; one that the app is in doubt about is kept by a tap. */
  async keepUntil(next: Locator): Promise<void> {
    const doubt = this.button('Keep it')
    await next.or(doubt).first().waitFor({ timeout: LONGEST_MS })
    if (!(await doubt.isVisible())) return
    const why = (await this.rig.page.locator('.session-line').textContent()) ?? ''
    // Readings that a busy computer gave late are no fault of the user, whose tap this would not be.
    if (LATE_READINGS.test(why)) await doubt.tap({ timeout: LONGEST_MS })
    else await this.tap('Keep it')
    await next.first().waitFor({ timeout: LONGEST_MS })
  }
}
