import { batch, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { RecogniserClient } from '../recogniser/client'
import type { CoreEvent, CorePhase } from '../shared/core/core'
import type { TrainedModel } from '../shared/model/evaluation'
import { matcherKind, type RecogniserModel } from '../shared/model/recogniser-model'
import { type Failure, fail, ok, type Result } from '../shared/model/result'
import { AXES } from '../shared/model/sample'
import { type TeachCost, teachCostInParts } from '../shared/teach/teach-cost'
import type { TaughtTakes } from '../shared/teach/teach-part'
import type { TeachStep, TeachUpdate } from '../shared/teach/teach-run'
import { addRest } from '../shared/training/rest-tail'
import { KEPT_MODELS } from '../shared/words/en/kept-models'
import { NOTICES } from '../shared/words/en/notices'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { Job, MotionState } from './app'
import { createJobSlot } from './jobs'
import { motionSentence, motionWords } from './motion-words'
import { SamplePump } from './sample-pump'
import type { Shelf } from './shelf'

const MAX_ANSWERS = 12
const STOPPED = fail('teach/stopped', NOTICES.stoppedBefore)

export interface TeachParts {
  shelf: Shelf
  motion: MotionState
  recogniser: RecogniserClient
  train: () => Promise<Result<TrainedModel>>
}

/** A gesture that is taught: one of the library, whose place is taken, or one more. */
export interface Wish {
  gestureId: string | null
  name: string
}

/** Teaching on the prop, tried on the phone with the model that would be exported. */
export interface TeachState {
  running: ReadonlySignal<boolean>
  trouble: ReadonlySignal<string | null>
  phase: ReadonlySignal<CorePhase>
  wish: ReadonlySignal<Wish | null>
  model: ReadonlySignal<RecogniserModel | null>
  /** Of this session, oldest first. */
  steps: ReadonlySignal<TeachStep[]>
  /** What was recognised after it was taught, newest first. */
  answers: ReadonlySignal<CoreEvent[]>
  cost: ReadonlySignal<Job<TeachCost>>
  /** Asks for the sensor, trains if need be, and opens a session. */
  start(wish: Wish): Promise<Result<null>>
  /** The same wish again, from nothing. */
  again(): Promise<void>
  stop(): Promise<void>
  /** Stops and forgets the session. */
  leave(): Promise<void>
  /** By held-out takes; of the movements of the session that is done. */
  measureCost(): Promise<void>
}

export function createTeach(parts: TeachParts): TeachState {
  return new Teach(parts)
}

class Teach implements TeachState {
  readonly running = signal(false)
  readonly trouble = signal<string | null>(null)
  readonly phase = signal<CorePhase>('idle')
  readonly wish = signal<Wish | null>(null)
  readonly model = signal<RecogniserModel | null>(null)
  readonly steps = signal<TeachStep[]>([])
  readonly answers = signal<CoreEvent[]>([])
  readonly cost: ReadonlySignal<Job<TeachCost>>
  readonly #parts: TeachParts
  readonly #pump: SamplePump<TeachUpdate>
  readonly #runCost: () => Promise<Result<TeachCost>>

  constructor(parts: TeachParts) {
    this.#parts = parts
    const { shelf } = parts
    const slot = createJobSlot<TeachCost>({
      owner: () => shelf.current.value?.id ?? null,
      basis: () => JSON.stringify([this.wish.value, this.steps.value.map(({ answer }) => answer)]),
      work: async (_variant, abort, onProgress) => {
        const full = await shelf.store.loadFull(shelf.current.peek()?.id ?? '')
        if (full === null) return fail('job/no-library', OPEN_LIBRARY.noneOpen)
        const run = parts.recogniser.parts({ signal: abort, onProgress })
        return teachCostInParts(run, full, this.#taught(full.library.target.rateHz), onProgress)
      },
    })
    this.cost = slot.job
    this.#runCost = () => slot.run()
    this.#pump = new SamplePump<TeachUpdate>({
      push: (samples) => parts.recogniser.pushTeach(samples),
      onAnswer: (update) => this.#take(update),
      onBroken: (why) => this.#halt(why),
    })
    this.#followSurroundings()
  }

  start = async (wish: Wish): Promise<Result<null>> => {
    this.#halt(null)
    const run = this.#pump.begin()
    this.trouble.value = null
    const { motion, train, shelf, recogniser } = this.#parts
    // Permission hangs on the tap that led here, so the sensor comes before the training.
    const reached = await motion.start()
    if (!this.#pump.isCurrent(run)) return STOPPED
    if (reached !== 'running') return this.#refuse(fail('teach/sensor', motionSentence(reached)))
    const trained = await train()
    if (!this.#pump.isCurrent(run)) return STOPPED
    if (!trained.ok) return this.#refuse(trained)
    const { model } = trained.value
    const library = shelf.current.peek()
    if (library === null) return this.#refuse(fail('teach/no-library', OPEN_LIBRARY.notOpen))
    if (matcherKind(model) !== 'template') {
      return this.#refuse(fail('teach/model', KEPT_MODELS.cannotBeTaught))
    }
    if (model.button) return this.#refuse(fail('teach/button', KEPT_MODELS.notTaughtByButton))
    const sign = motion.source().facts().accelSign
    const opened = await recogniser.openTeach(model, library.target, sign)
    if (!this.#pump.isCurrent(run)) return STOPPED
    if (!opened.ok) return this.#refuse(opened)
    this.model.value = model
    this.wish.value = wish
    const begun = await this.#begin()
    if (!this.#pump.isCurrent(run)) return STOPPED
    if (!begun.ok) return this.#refuse(begun)
    this.running.value = true
    this.#pump.listen(run, motion.source())
    return ok(null)
  }

  again = async (): Promise<void> => {
    const begun = await this.#begin()
    if (!begun.ok) this.#refuse(begun)
  }

  stop = async (): Promise<void> => this.#halt(null)

  leave = async (): Promise<void> => {
    this.#halt(null)
    this.#forget()
  }

  measureCost = async (): Promise<void> => {
    await this.#runCost()
  }

  #begin(): Promise<Result<null>> {
    const place = this.model
      .peek()
      ?.gestures.findIndex(({ id }) => id === this.wish.peek()?.gestureId)
    this.#forget()
    return this.#parts.recogniser.beginTeach(place === undefined || place < 0 ? null : place)
  }

  #forget(): void {
    batch(() => {
      this.steps.value = []
      this.answers.value = []
    })
  }

  #take({ steps, phase }: TeachUpdate): void {
    batch(() => {
      this.phase.value = phase
      const taught = steps.filter(({ answer }) => answer.status !== 'event')
      const events = steps.filter(({ answer }) => answer.status === 'event')
      if (taught.length > 0) this.steps.value = [...this.steps.peek(), ...taught]
      if (events.length === 0) return
      const heard = events.map(({ answer }) => answer.event).reverse()
      this.answers.value = [...heard, ...this.answers.peek()].slice(0, MAX_ANSWERS)
    })
  }

  /** The movements that were taken, as takes that end at rest. */
  #taught(rateHz: number): TaughtTakes {
    const takes = this.steps.peek().flatMap(({ counts }) => {
      if (counts === null) return []
      return [{ counts: addRest(counts, rateHz), from: 0, to: counts.length / AXES }]
    })
    return { gestureId: this.wish.peek()?.gestureId ?? null, takes }
  }

  /** Ends what runs, and what is only starting. */
  #halt(why: string | null): void {
    this.#pump.end()
    if (!this.running.peek()) return
    batch(() => {
      this.running.value = false
      this.trouble.value = why
      this.phase.value = 'idle'
    })
  }

  #refuse(failure: Failure): Failure {
    this.trouble.value = failure.message
    return failure
  }

  /** Stops when the source falls silent, and forgets all when another library is opened. */
  #followSurroundings(): void {
    const { motion, shelf } = this.#parts
    let lastId: string | null = null
    effect(() => {
      const id = shelf.current.value?.id ?? null
      if (id !== lastId) {
        this.#halt(null)
        this.model.value = null
        this.wish.value = null
        this.#forget()
      }
      lastId = id
    })
    effect(() => {
      const status = motion.status.value
      if (!this.running.peek() || status === 'running') return
      this.#halt(motionWords(status) === null ? null : motionSentence(status))
    })
  }
}
