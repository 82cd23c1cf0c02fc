import { type Failure, ok, type Result } from '../shared/model/result'
import { RECORDING } from '../shared/words/en/recording'
import type { Capture } from './capture'
import type { Intake } from './intake'
import { type LiveClient, LiveCutter } from './live-cutter'
import type { OfferShelf } from './offer-shelf'
import type { Run } from './run'
import { LEAD_IN_MS, TAIL_MS } from './timing'
import type { RecorderEvents, RecordSetup } from './types'

const IGNORED = { short: RECORDING.leftOutShort, long: RECORDING.leftOutLong }

export interface HandsFreeDeps {
  intake: Intake
  shelf: OfferShelf
  client: LiveClient
  events: RecorderEvents
  /** Recognition failed and the run cannot go on. */
  onBroken: () => void
}

/**
 * Every movement the segmenter cuts becomes an offered take. The segmenter presses and releases the
 * button, as it were; only movements go to the journal, the rest between them does not.
 */
export class HandsFreeRun implements Run {
  readonly phase = 'hands-free'
  #cutter: LiveCutter | null = null
  #unlisten: () => void = () => undefined
  /** The movement under way, if there is one. */
  #capture: Capture | null = null
  /** End of the movement before, which the next lead-in must not reach into. */
  #lastEndMs = Number.NEGATIVE_INFINITY
  /** Cut movements whose tail is still coming in. */
  readonly #ending = new Set<Promise<void>>()

  constructor(
    readonly deps: HandsFreeDeps,
    readonly setup: RecordSetup,
    readonly gestureId: string,
    readonly beganMs: number,
  ) {}

  async begin(): Promise<Result<unknown>> {
    const { intake, client } = this.deps
    const sign = intake.facts().accelSign
    const opened = await LiveCutter.open(client, this.setup.target, sign, {
      onMoving: (fromMs) => this.#press(fromMs),
      onCut: (startMs, endMs) => this.#release(startMs, endMs),
      onIgnored: (reason) => this.#ignore(reason),
      onTrouble: (failure) => this.#break(failure),
    })
    if (!opened.ok) return opened
    const cutter = opened.value
    this.#cutter = cutter
    this.#unlisten = intake.listen((sample) => cutter.add(sample))
    return ok(null)
  }

  async end(): Promise<void> {
    this.#unlisten()
    await Promise.all([this.#cutter?.close(), ...this.#ending])
    await this.#forget()
  }

  abandon(): Promise<void> {
    return this.end()
  }

  #press(fromMs: number): Capture {
    const leadInMs = Math.max(fromMs - LEAD_IN_MS, this.#lastEndMs)
    this.#capture = this.deps.intake.captureTake(this.setup, this.gestureId, leadInMs)
    return this.#capture
  }

  #release(startMs: number, endMs: number): void {
    const capture = this.#capture ?? this.#press(startMs)
    this.#capture = null
    this.#lastEndMs = endMs
    const ending = this.#offer(capture, endMs).finally(() => this.#ending.delete(ending))
    this.#ending.add(ending)
  }

  async #offer(capture: Capture, endMs: number): Promise<void> {
    const { intake, shelf } = this.deps
    await intake.until(endMs + TAIL_MS)
    intake.release(capture)
    await shelf.offer(capture, this.setup.target, intake.facts())
  }

  #ignore(reason: keyof typeof IGNORED): void {
    void this.#forget()
    this.deps.events.onIgnored(IGNORED[reason])
  }

  async #forget(): Promise<void> {
    const capture = this.#capture
    if (capture === null) return
    this.#capture = null
    this.deps.intake.release(capture)
    await capture.discard()
  }

  #break(failure: Failure): void {
    this.deps.events.onTrouble(failure)
    this.deps.onBroken()
  }
}
