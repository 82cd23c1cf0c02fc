import { signal } from '@preact/signals'
import type { RecordSetup } from '../../recording/types'
import type { Prompt } from '../../shared/collect/plan'
import {
  advanced,
  backgroundSoFarMs,
  currentPrompt,
  endedEarly,
  type Outcome,
  promptBefore,
  promptHand,
  type SessionRun,
  undone,
} from '../../shared/collect/session-run'
import type { Library, Recording } from '../../shared/model/library'
import type { Failure, Result } from '../../shared/model/result'
import type { Target } from '../../shared/model/target'
import { judgedBy } from './judged-by'
import { putRun } from './kept-run'
import { GOOD_MS, READ_MS, READY_MS, type SessionPhase } from './phase'
import { type MakerParts, TakeMaker } from './take-maker'

const TICK_MS = 200
/** In these a tap on the one big button begins what is asked. */
const STARTABLE: readonly SessionPhase['name'][] = [
  'waiting',
  'paused',
  'no-readings',
  'not-stored',
]

/**
 * Leads a tester through a session: one prompt at a time, each take recorded, checked and stored before
 * the next is asked. After each step the run is stored, so that it goes on from there.
 */
export class SessionRunner {
  readonly library: Library
  readonly run
  readonly phase = signal<SessionPhase>({ name: 'waiting' })
  /** Time left of a rest or a background, ms. */
  readonly leftMs = signal(0)
  readonly #parts: MakerParts
  readonly #target: Target
  readonly #maker: TakeMaker
  readonly #leave: (() => void)[] = []
  /** Gestures begun by a tap in this visit: the next take of them is asked without one. */
  readonly #known = new Set<string>()
  /** Recordings of this run that are stored. */
  #stored: Recording[]
  #pauseNext = false
  /** The background ended by a pause: there is more of it to come. */
  #isPaused = false
  #isClosed = false
  /** Counts up at each turn of events, so that what was awaited before knows it is out of date. */
  #turn = 0

  constructor(parts: MakerParts, library: Library, run: SessionRun, stored: Recording[]) {
    this.#parts = parts
    this.library = library
    this.run = signal(run)
    this.#stored = stored
    this.#target = judgedBy(library, run)
    this.#maker = new TakeMaker(parts, { ...library, target: this.#target }, stored)
    this.#watchSensor()
    this.#watchPage()
    if (currentPrompt(run) === null) this.phase.value = { name: 'ended' }
    parts.performing.value = this.phase.peek().name !== 'ended'
  }

  /** From a tap: the sensor starts, or what is asked begins. */
  start = async (): Promise<void> => {
    if (!STARTABLE.includes(this.phase.peek().name)) return
    if (this.#maker.isOffered) return this.keep()
    if (this.#maker.isHeldBack) return this.#keepBackground()
    if (this.#parts.motion.status.peek() === 'running') return this.#begin()
    const turn = this.#next()
    const status = await this.#parts.motion.start()
    if (turn !== this.#turn) return
    if (status === 'running') await this.#begin()
    else this.#show({ name: 'no-readings' })
  }

  /** Stops after what is finished; a movement under way is forgotten and asked again. */
  pause = async (): Promise<void> => {
    const { name } = this.phase.peek()
    if (name === 'checking') this.#pauseNext = true
    if (!['ready', 'go', 'good', 'resting', 'background'].includes(name)) return
    this.#next()
    this.#show({ name: 'paused' })
    this.#isPaused = name === 'background'
    if (name === 'background') this.#addStored(await this.#maker.endBackground())
    else await this.#maker.abandon()
  }

  /** The doubtful take is forgotten, and the same is asked again. */
  again = async (): Promise<void> => {
    if (this.phase.peek().name !== 'doubt') return
    this.#next()
    await this.#maker.abandon()
    await this.#take(READY_MS)
  }

  /** Stores the take that waits, doubtful or not stored before. */
  keep = async (): Promise<void> => {
    if (!this.#maker.isOffered) return
    const turn = this.#next()
    this.#show({ name: 'checking' })
    const kept = await this.#maker.keep()
    if (!kept.ok) return this.#fail(kept)
    this.#addStored(kept)
    await this.#advance({ kind: 'kept', recordingId: kept.value.id })
    void this.#parts.shelf.askToKeep()
    this.#show({ name: 'good' })
    if (await this.#waited(GOOD_MS, turn)) return
    await this.#ask(true)
  }

  /** The last kept take is taken back and asked again. */
  undo = async (): Promise<void> => {
    const back = undone(this.run.peek())
    if (back === null) return
    this.#next()
    await this.#maker.abandon()
    const removed = await this.#parts.shelf.store.deleteRecordings([back.recordingId])
    if (!removed.ok) return this.#fail(removed)
    this.#stored = this.#stored.filter(({ id }) => id !== back.recordingId)
    this.#maker.forget(back.recordingId)
    await this.#note(back.run)
    this.#show({ name: 'waiting' })
  }

  /** This one is left out, as by a tester who cannot do it. */
  skip = async (): Promise<void> => {
    this.#next()
    await this.#maker.abandon()
    await this.#advance({ kind: 'skipped' })
    await this.#ask(false)
  }

  /** From a tap: the rest was long enough. */
  endRest = async (): Promise<void> => {
    if (this.phase.peek().name !== 'resting') return
    this.#next()
    await this.#advance({ kind: 'rested' })
    await this.#ask(true)
  }

  /** Keeps the background as long as it is, and is done with it. */
  endBackground = async (): Promise<void> => {
    if (this.phase.peek().name !== 'background') return
    this.#isPaused = false
    this.#next()
    this.#show({ name: 'checking' })
    await this.#takeBackground(await this.#maker.endBackground())
  }

  endEarly = async (): Promise<void> => {
    this.#next()
    await this.#maker.abandon()
    await this.#note(endedEarly(this.run.peek(), now()))
    this.#show({ name: 'ended' })
  }

  /** Lets go of sensor and page; what is under way is dropped. */
  close(): void {
    this.#next()
    this.#isClosed = true
    this.#parts.performing.value = false
    for (const leave of this.#leave) leave()
    this.#maker.close()
  }

  async #begin(): Promise<void> {
    const prompt = currentPrompt(this.run.peek())
    if (prompt === null) return
    if (prompt.kind === 'rest') return this.#rest(prompt.durationMs)
    if (prompt.kind === 'background') return this.#background(prompt.durationMs)
    this.#known.add(prompt.gestureId)
    return this.#take(READY_MS)
  }

  async #take(readyMs: number): Promise<void> {
    const prompt = currentPrompt(this.run.peek())
    if (prompt?.kind !== 'take') return
    const turn = this.#next()
    this.#show({ name: 'ready' })
    if (await this.#waited(readyMs, turn)) return
    const begun = await this.#maker.beginTake(this.#setup(), prompt.gestureId)
    if (turn !== this.#turn) return
    if (!begun.ok) return this.#fail(begun)
    this.#show({ name: 'go' })
    await this.#maker.movementOver(() => turn === this.#turn)
    if (turn !== this.#turn) return
    this.#show({ name: 'checking' })
    const words = await this.#maker.endTake()
    if (turn !== this.#turn) return
    if (words.length === 0) await this.keep()
    else this.#show({ name: 'doubt', words })
  }

  async #rest(durationMs: number): Promise<void> {
    const turn = this.#next()
    this.#show({ name: 'resting' })
    if (await this.#countedDown(durationMs, turn)) return
    await this.#advance({ kind: 'rested' })
    await this.#ask(false)
  }

  async #background(askedMs: number): Promise<void> {
    const turn = this.#next()
    const begun = await this.#maker.beginBackground(this.#setup())
    if (turn !== this.#turn) return
    if (!begun.ok) return this.#fail(begun)
    this.#show({ name: 'background' })
    if (await this.#countedDown(askedMs - backgroundSoFarMs(this.#stored), turn)) return
    await this.endBackground()
  }

  /** Stores the background that could not be stored before. */
  async #keepBackground(): Promise<void> {
    this.#next()
    this.#show({ name: 'checking' })
    await this.#takeBackground(await this.#maker.keepHeldBack())
  }

  /** Goes on behind a background, or with the rest of one that was paused. */
  async #takeBackground(kept: Result<Recording>): Promise<void> {
    if (!kept.ok) return this.#fail(kept)
    this.#addStored(kept)
    if (this.#isPaused) return this.#show({ name: 'paused' })
    await this.#advance({ kind: 'kept', recordingId: kept.value.id })
    await this.#ask(false)
  }

  /** The next prompt: by itself when the tester knows it, else after a tap. */
  async #ask(goesOn: boolean): Promise<void> {
    this.#next()
    const prompt = currentPrompt(this.run.peek())
    if (prompt === null) return this.#show({ name: 'ended' })
    if (this.#pauseNext) {
      this.#pauseNext = false
      return this.#show({ name: 'paused' })
    }
    if (prompt.kind === 'rest') return this.#rest(prompt.durationMs)
    const before = promptBefore(this.run.peek())
    if (!goesOn || prompt.kind === 'background' || this.#needsTap(prompt, before)) {
      return this.#show({ name: 'waiting' })
    }
    const isRepeat = before?.kind === 'take' && before.gestureId === prompt.gestureId
    return this.#take(isRepeat ? READY_MS : READ_MS)
  }

  /** New to the tester, or the prop changes hands. */
  #needsTap(prompt: Extract<Prompt, { kind: 'take' }>, before: Prompt | null): boolean {
    const changesHand = before?.kind === 'take' && before.hand !== prompt.hand
    return changesHand || !this.#known.has(prompt.gestureId)
  }

  #setup(): RecordSetup {
    const run = this.run.peek()
    return {
      libraryId: this.library.id,
      testerCode: run.testerCode,
      hand: promptHand(run),
      target: this.#target,
      sessionId: run.id,
    }
  }

  #advance(outcome: Outcome): Promise<void> {
    return this.#note(advanced(this.run.peek(), outcome, now()))
  }

  /** Shows and stores the run. Not stored is no loss: the takes say where it stood. */
  async #note(run: SessionRun): Promise<void> {
    this.run.value = run
    await putRun(this.#parts.shelf, run)
  }

  #addStored(kept: { ok: true; value: Recording } | Failure): void {
    if (kept.ok) this.#stored = [...this.#stored, kept.value]
  }

  #watchSensor(): void {
    const { status } = this.#parts.motion
    const onStatus = () => {
      const { name } = this.phase.peek()
      if (status.peek() === 'running' || !['ready', 'go', 'background'].includes(name)) return
      void this.pause().then(() => this.#show({ name: 'no-readings' }))
    }
    this.#leave.push(status.subscribe(onStatus))
  }

  #watchPage(): void {
    const onHidden = () => {
      if (document.visibilityState === 'hidden') void this.pause()
    }
    document.addEventListener('visibilitychange', onHidden)
    this.#leave.push(() => document.removeEventListener('visibilitychange', onHidden))
  }

  #fail(failure: Failure): void {
    const isSilent = failure.code === 'record/no-readings'
    this.#show(
      isSilent ? { name: 'no-readings' } : { name: 'not-stored', message: failure.message },
    )
  }

  /** Waits, and tells whether things have taken another turn meanwhile. */
  async #waited(ms: number, turn: number): Promise<boolean> {
    await new Promise((resolve) => setTimeout(resolve, ms))
    return turn !== this.#turn
  }

  /** The same, showing the time that is left. */
  async #countedDown(durationMs: number, turn: number): Promise<boolean> {
    const endMs = performance.now() + durationMs
    for (let leftMs = durationMs; leftMs > 0; leftMs = endMs - performance.now()) {
      this.leftMs.value = leftMs
      if (await this.#waited(TICK_MS, turn)) return true
    }
    return false
  }

  #show(phase: SessionPhase): void {
    if (this.#isClosed) return
    this.phase.value = phase
    this.#parts.performing.value = phase.name !== 'ended'
  }

  #next(): number {
    this.#turn++
    return this.#turn
  }
}

function now(): string {
  return new Date().toISOString()
}
