import type { Result } from '../shared/model/result'
import type { Capture } from './capture'
import { completed } from './facts'
import type { HeldBack } from './held-back'
import type { Intake } from './intake'
import type { Run } from './run'
import type { RecorderEvents, RecordSetup } from './types'

/** A long recording of everything that is no gesture; stored at its end without asking. */
export class BackgroundRun implements Run {
  readonly phase = 'background'
  readonly beganMs: number
  readonly #intake: Intake
  readonly #events: RecorderEvents
  readonly #heldBack: HeldBack
  readonly #capture: Capture

  constructor(
    intake: Intake,
    heldBack: HeldBack,
    events: RecorderEvents,
    setup: RecordSetup,
    fromMs: number,
  ) {
    this.#intake = intake
    this.#heldBack = heldBack
    this.#events = events
    this.beganMs = fromMs
    this.#capture = intake.captureBackground(setup, fromMs)
  }

  begin(): Promise<Result<unknown>> {
    return this.#capture.opened
  }

  /** What cannot be stored now, as on a full disk, is held back whole until there is room. */
  async end(): Promise<void> {
    this.#intake.release(this.#capture)
    const { recording: begun } = this.#capture
    const recording = completed(begun, this.#capture.samples(), this.#intake.facts())
    const stored = await this.#capture.finish(recording)
    if (stored.ok) return this.#events.onStored(stored.value)
    this.#heldBack.add(this.#capture, recording)
    this.#events.onTrouble(stored)
  }

  async abandon(): Promise<void> {
    this.#intake.release(this.#capture)
    await this.#capture.discard()
  }
}
