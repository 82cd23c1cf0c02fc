import type { MotionSource } from '../sensors/motion-source'
import { fail, ok, type Result } from '../shared/model/result'
import type { SampleBlock } from '../shared/model/sample'
import { RECORDING } from '../shared/words/en/recording'
import { BackgroundRun } from './background-run'
import { toBlock } from './block'
import { HandsFreeRun } from './hands-free-run'
import { HeldBack } from './held-back'
import { HoldRun } from './hold-run'
import { Intake, type IntakeDeps } from './intake'
import type { LiveClient } from './live-cutter'
import { OfferShelf } from './offer-shelf'
import { checkReady } from './ready'
import type { Run } from './run'
import type { RecorderEvents, RecordPhase, RecordSetup } from './types'

export interface RecorderDeps extends Omit<IntakeDeps, 'onTrouble'> {
  client: LiveClient
  events: RecorderEvents
}

/**
 * Records takes and background from one motion source. Calls are carried out one after another,
 * with the time at which they were made: a press right after a release waits for the release's
 * tail and still loses nothing, as samples are remembered for ten seconds.
 */
export class Recorder {
  readonly #deps: RecorderDeps
  readonly #shelf: OfferShelf
  readonly #heldBack: HeldBack
  #intake: Intake | null = null
  #phase: RecordPhase = 'idle'
  #run: Run | null = null
  #queue: Promise<unknown> = Promise.resolve()

  constructor(deps: RecorderDeps) {
    this.#deps = deps
    this.#shelf = new OfferShelf(deps.events)
    this.#heldBack = new HeldBack(deps.events)
  }

  /** Records from this source from now on; whatever runs is stopped first. */
  use(source: MotionSource): Promise<void> {
    void this.stop()
    return this.#enqueue(async () => {
      this.#intake?.close()
      const { events, ...deps } = this.#deps
      this.#intake = new Intake({ ...deps, onTrouble: events.onTrouble }, source)
    })
  }

  phase(): RecordPhase {
    return this.#phase
  }

  /** How long the present recording has been running, by its samples, ms. */
  elapsedMs(): number {
    return this.#run === null ? 0 : this.#nowMs() - this.#run.beganMs
  }

  /** The last moments of motion for the live trace, with times up to 0. */
  trace(durationMs: number): SampleBlock {
    const nowMs = this.#nowMs()
    return toBlock(this.#intake?.ring.since(nowMs - durationMs) ?? [], nowMs)
  }

  /** The button goes down: records one take, with the rest before it. */
  beginHold(setup: RecordSetup, gestureId: string): Promise<Result<null>> {
    const pressMs = this.#nowMs()
    return this.#begin((intake) => new HoldRun(intake, this.#shelf, setup, gestureId, pressMs))
  }

  /** The button comes up: the take is offered after a short tail. */
  endHold(): Promise<void> {
    return this.#end((run) => run.phase === 'holding')
  }

  /** Offers every movement that the segmenter cuts, until stopped. */
  beginHandsFree(setup: RecordSetup, gestureId: string): Promise<Result<null>> {
    const { client, events } = this.#deps
    const beganMs = this.#nowMs()
    return this.#begin((intake) => {
      const onBroken = () => void this.stop()
      const deps = { intake, shelf: this.#shelf, client, events, onBroken }
      return new HandsFreeRun(deps, setup, gestureId, beganMs)
    })
  }

  /** Records everything until stopped; stored without asking, or held back when that fails. */
  beginBackground(setup: RecordSetup): Promise<Result<null>> {
    const { events } = this.#deps
    const beganMs = this.#nowMs()
    return this.#begin(
      (intake) => new BackgroundRun(intake, this.#heldBack, events, setup, beganMs),
    )
  }

  /** Ends whatever is running. */
  stop(): Promise<void> {
    return this.#end(() => true)
  }

  /** Stores the offered take with this id, or the oldest; it stays offered when that fails. */
  keep(id?: string): Promise<Result<null>> {
    return this.#enqueue(() => this.#shelf.keep(id))
  }

  /** Forgets the offered take with this id, or the oldest. */
  drop(id?: string): Promise<void> {
    return this.#enqueue(() => this.#shelf.drop(id))
  }

  /** Stores what was held back with this id; it stays held back when that fails. */
  keepHeldBack(id: string): Promise<Result<null>> {
    return this.#enqueue(() => this.#heldBack.keep(id))
  }

  /** Forgets what was held back with this id. */
  dropHeldBack(id: string): Promise<void> {
    return this.#enqueue(() => this.#heldBack.drop(id))
  }

  /** Lets go of all that is held back: what is stored of it is offered as cut off. */
  leaveHeldBack(): Promise<void> {
    return this.#enqueue(() => this.#heldBack.leave())
  }

  #nowMs(): number {
    return this.#intake?.ring.newestMs() ?? 0
  }

  #begin(makeRun: (intake: Intake) => Run): Promise<Result<null>> {
    return this.#enqueue(async () => {
      const intake = this.#intake
      if (intake === null) return fail('record/no-readings', RECORDING.noSource)
      const ready = checkReady(intake.status(), this.#phase)
      if (!ready.ok) return ready
      const run = makeRun(intake)
      this.#run = run
      this.#setPhase(run.phase)
      const begun = await run.begin()
      if (begun.ok) return ok(null)
      await run.abandon()
      this.#run = null
      this.#setPhase('idle')
      return begun
    })
  }

  #end(isMeant: (run: Run) => boolean): Promise<void> {
    const atMs = this.#nowMs()
    return this.#enqueue(async () => {
      const run = this.#run
      if (run === null || !isMeant(run)) return
      this.#setPhase('saving')
      try {
        await run.end(atMs)
      } finally {
        this.#run = null
        this.#setPhase('idle')
      }
    })
  }

  #setPhase(phase: RecordPhase): void {
    if (phase === this.#phase) return
    this.#phase = phase
    this.#deps.events.onPhase(phase)
  }

  #enqueue<T>(job: () => Promise<T>): Promise<T> {
    const result = this.#queue.then(job)
    this.#queue = result.catch(() => undefined)
    return result
  }
}
