import type { Result } from '../shared/model/result'
import type { Capture } from './capture'
import type { Intake } from './intake'
import type { OfferShelf } from './offer-shelf'
import type { Run } from './run'
import { LEAD_IN_MS, TAIL_MS } from './timing'
import type { RecordSetup } from './types'

/** One take while a button is held, with the rest before the press and a tail after the release. */
export class HoldRun implements Run {
  readonly phase = 'holding'
  readonly beganMs: number
  readonly #intake: Intake
  readonly #shelf: OfferShelf
  readonly #setup: RecordSetup
  readonly #capture: Capture

  constructor(
    intake: Intake,
    shelf: OfferShelf,
    setup: RecordSetup,
    gestureId: string,
    pressMs: number,
  ) {
    this.#intake = intake
    this.#shelf = shelf
    this.#setup = setup
    this.beganMs = pressMs
    this.#capture = intake.captureTake(setup, gestureId, pressMs - LEAD_IN_MS)
  }

  begin(): Promise<Result<unknown>> {
    return this.#capture.opened
  }

  async end(releaseMs: number): Promise<void> {
    await this.#intake.until(releaseMs + TAIL_MS)
    this.#intake.release(this.#capture)
    const press = this.#setup.trimToPress ? this.#capture.spanOf(this.beganMs, releaseMs) : null
    await this.#shelf.offer(this.#capture, this.#setup.target, this.#intake.facts(), press)
  }

  async abandon(): Promise<void> {
    this.#intake.release(this.#capture)
    await this.#capture.discard()
  }
}
