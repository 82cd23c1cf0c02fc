import type { Result } from '../shared/model/result'
import type { Capture } from './capture'
import { completed } from './facts'
import type { Intake } from './intake'
import type { Run } from './run'
import type { RecorderEvents, RecordSetup } from './types'

/** A long recording of everything that is no gesture; stored at its end without asking. */
export class BackgroundRun implements Run {
  readonly phase = 'background'
  readonly beganMs: number
  readonly #intake: Intake
  readonly #events: RecorderEvents
  readonly #capture: Capture

  constructor(intake: Intake, events: RecorderEvents, setup: RecordSetup, fromMs: number) {
    this.#intake = intake
    this.#events = events
    this.beganMs = fromMs
    this.#capture = intake.captureBackground(setup, fromMs)
  }

  begin(): Promise<Result<unknown>> {
    return this.#capture.opened
  }

  /** When storing fails the journal stays, to be offered at the next start. */
  async end(): Promise<void> {
    this.#intake.release(this.#capture)
    const { recording } = this.#capture
    const stored = await this.#capture.finish(
      completed(recording, this.#capture.samples(), this.#intake.facts()),
    )
    if (stored.ok) this.#events.onStored(stored.value)
    else this.#events.onTrouble(stored)
  }

  async abandon(): Promise<void> {
    this.#intake.release(this.#capture)
    await this.#capture.discard()
  }
}
