import { batch, effect, type ReadonlySignal, signal, untracked } from '@preact/signals'
import type { MotionStatus } from '../../sensors/motion-source'
import type { TrainedModel } from '../../shared/model/evaluation'
import type { Library } from '../../shared/model/library'
import { advanceShow, asksForStart, OFF, type Show, type ShowEvent } from '../../shared/stage/show'
import { addHit, addTurn, emptyTally, type Tally } from '../../shared/stage/tally'
import { advanceTurn, firstTurn, type Turn, type TurnEvent } from '../../shared/stage/turn'
import { KEPT_MODELS } from '../../shared/words/en/kept-models'
import type { Job, LiveState } from '../app'
import type { Notices } from '../notices'
import { readTally, writeTally } from './tally-store'

/** Often enough that a countdown does not limp. */
const TICK_MS = 100

export interface StageState {
  show: ReadonlySignal<Show>
  /** The visitor's turn; null when there are no cards. */
  turn: ReadonlySignal<Turn | null>
  /** Of the open library, this evening. */
  tally: ReadonlySignal<Tally>
  /** Clock of `turn`, ms; moves while a show is on. */
  nowMs: ReadonlySignal<number>
  /**
   * Starts the show; the motion sensor may ask for permission, so it is called from a tap. From then
   * on it comes back by itself, whatever is lost.
   * @param cards visitors are asked for one movement after the other
   */
  begin(cards: boolean): void
  /** The visitor is ready, or wants another card. */
  ready(): void
  nextCard(): void
  leave(): void
  resetTally(): void
}

export interface StageParts {
  live: LiveState
  motionStatus: ReadonlySignal<MotionStatus>
  model: ReadonlySignal<Job<TrainedModel>>
  library: ReadonlySignal<Library | null>
  notices: Pick<Notices, 'say'>
}

/** The stage: live recognition that stays on, visitors' turns, and the evening's tally. */
export function createStageState(parts: StageParts): StageState {
  return new Stage(parts)
}

class Stage implements StageState {
  readonly show = signal<Show>(OFF)
  readonly turn = signal<Turn | null>(null)
  readonly tally = signal<Tally>(emptyTally(new Date().toISOString()))
  readonly nowMs = signal(0)
  readonly #parts: StageParts
  #ticking: ReturnType<typeof setInterval> | null = null
  /** Counts starts, and leaving: what an earlier one came to is nobody's business any more. */
  #starts = 0
  #newest: LiveState['events']['value'][number] | undefined

  constructor(parts: StageParts) {
    this.#parts = parts
    effect(() => {
      const id = parts.library.value?.id
      const kept = id === undefined ? null : readTally(id)
      this.tally.value = kept ?? emptyTally(new Date().toISOString())
    })
    effect(() => {
      if (!parts.live.running.value) untracked(() => this.#onStopped())
    })
    effect(() => {
      const running = parts.motionStatus.value === 'running'
      if (running) untracked(() => this.#step({ kind: 'readings', atMs: performance.now() }))
    })
    effect(() => {
      const events = parts.live.events.value
      untracked(() => this.#onEvents(events))
    })
  }

  begin(cards: boolean): void {
    const atMs = performance.now()
    batch(() => {
      this.nowMs.value = atMs
      this.turn.value = cards ? firstTurn(this.#gestureIds(), atMs) : null
    })
    this.#ticking ??= setInterval(() => this.#tick(), TICK_MS)
    this.#step({ kind: 'begin' })
  }

  ready(): void {
    this.#stepTurn({ kind: 'ready', atMs: performance.now() })
  }

  nextCard(): void {
    this.#stepTurn({ kind: 'next', atMs: performance.now() })
  }

  leave(): void {
    this.#starts += 1
    this.#step({ kind: 'leave' })
    void this.#parts.live.stop()
  }

  resetTally(): void {
    const before = this.tally.peek()
    const id = this.#parts.library.peek()?.id
    this.#count(emptyTally(new Date().toISOString()))
    this.#parts.notices.say(KEPT_MODELS.tallySetToNought, async () => {
      if (id !== undefined) writeTally(id, before)
      if (id === this.#parts.library.peek()?.id) this.tally.value = before
      return true
    })
  }

  #tick(): void {
    const atMs = performance.now()
    batch(() => {
      this.nowMs.value = atMs
      this.#step({ kind: 'tick', atMs })
      this.#stepTurn({ kind: 'tick', atMs })
    })
  }

  #step(event: ShowEvent): void {
    const before = this.show.peek()
    const after = advanceShow(before, event)
    this.show.value = after
    if (after.phase === 'off' && this.#ticking !== null) {
      clearInterval(this.#ticking)
      this.#ticking = null
    }
    if (asksForStart(before, after)) void this.#start()
  }

  async #start(): Promise<void> {
    this.#starts += 1
    const start = this.#starts
    const started = await this.#parts.live.start()
    if (start !== this.#starts) return
    const atMs = performance.now()
    if (started.ok) {
      this.#step({ kind: 'started', atMs })
      if (!this.#parts.live.running.peek()) this.#onStopped()
    } else {
      this.#step({ kind: 'refused', sentence: started.message, atMs })
    }
  }

  #onStopped(): void {
    const gone = this.#parts.motionStatus.peek() === 'running' ? 'recogniser' : 'sensor'
    this.#step({ kind: 'lost', gone, atMs: performance.now() })
  }

  /** Newest first; those behind the one met last are known. */
  #onEvents(events: LiveState['events']['value']): void {
    const known = this.#newest === undefined ? -1 : events.indexOf(this.#newest)
    const fresh = known < 0 ? events : events.slice(0, known)
    this.#newest = events[0]
    if (this.show.peek().phase === 'off') return
    for (const { event } of [...fresh].reverse()) {
      const named = event.kind === 'gesture' && event.gesture !== null
      this.#answered(named ? this.#idOf(event.gesture ?? 0) : null)
    }
  }

  #answered(gestureId: string | null): void {
    if (gestureId !== null) this.#count(addHit(this.tally.peek(), gestureId))
    this.#stepTurn({ kind: 'answered', gestureId, atMs: performance.now() })
  }

  #stepTurn(event: TurnEvent): void {
    const before = this.turn.peek()
    if (before === null || this.show.peek().phase === 'off') return
    const after = advanceTurn(before, event, this.#gestureIds())
    if (after === before) return
    this.turn.value = after
    if (after.step === 'told') this.#count(addTurn(this.tally.peek(), after.outcome === 'right'))
  }

  #count(tally: Tally): void {
    this.tally.value = tally
    const id = this.#parts.library.peek()?.id
    if (id !== undefined) writeTally(id, tally)
  }

  #gestureIds(): string[] {
    return this.#parts.library.peek()?.gestures.map(({ id }) => id) ?? []
  }

  #idOf(index: number): string | null {
    const job = this.#parts.model.peek()
    return job.state === 'done' ? (job.value.model.gestures[index]?.id ?? null) : null
  }
}
