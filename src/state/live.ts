import { batch, effect, signal } from '@preact/signals'
import type { RecogniserClient } from '../recogniser/client'
import type { TrainedModel } from '../shared/model/evaluation'
import type { Library } from '../shared/model/library'
import { type Failure, fail, ok, type Result } from '../shared/model/result'
import type { ButtonChange, LiveUpdate } from '../shared/protocol/recogniser'
import { NOTICES } from '../shared/words/en/notices'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { LiveState, MotionState } from './app'
import { motionSentence, motionWords } from './motion-words'
import { SamplePump } from './sample-pump'

const MAX_EVENTS = 50
/** Motion energy kept for the view, in seconds. */
const ENERGY_SPAN_S = 6
/** An answer takes milliseconds. A worker that died without a word is found out after this long. */
const ANSWER_WITHIN_MS = 3000
const STOPPED = fail('live/stopped', NOTICES.stoppedBefore)

export interface LiveParts {
  recogniser: RecogniserClient
  motion: MotionState
  library: () => Library | null
  train: () => Promise<Result<TrainedModel>>
}

/** Live recognition with the model that is exported, in the worker. */
export class Live implements LiveState {
  readonly running = signal(false)
  readonly events = signal<LiveState['events']['value']>([])
  readonly energy = signal<Uint32Array>(new Uint32Array(0))
  readonly sampleCount = signal(0)
  readonly phase = signal<LiveState['phase']['value']>('idle')
  readonly trouble = signal<string | null>(null)
  readonly #parts: LiveParts
  readonly #pump: SamplePump<LiveUpdate>
  /** Changes of the button that the worker has not been told. */
  #buttons: ButtonChange[] = []
  #energySpan = 0
  /** The worker was asked to listen: it is to be told when that ends. */
  #isOpen = false

  constructor(parts: LiveParts) {
    this.#parts = parts
    this.#pump = new SamplePump<LiveUpdate>({
      push: (samples) => {
        const buttons = this.#buttons
        this.#buttons = []
        return parts.recogniser.pushLive(samples, { timeoutMs: ANSWER_WITHIN_MS, buttons })
      },
      onAnswer: (update, startMs) => this.#take(update, startMs),
      onBroken: (why) => void this.#halt(why),
    })
    this.#followSurroundings()
  }

  start = async (): Promise<Result<null>> => {
    if (this.running.peek()) return ok(null)
    const run = this.#pump.begin()
    this.trouble.value = null
    const { motion, library, train, recogniser } = this.#parts
    // Permission hangs on the tap that led here, so the sensor comes before the training.
    const reached = await motion.start()
    if (!this.#pump.isCurrent(run)) return STOPPED
    if (reached !== 'running') return this.#refuse(fail('live/sensor', motionSentence(reached)))
    const trained = await train()
    if (!this.#pump.isCurrent(run)) return STOPPED
    if (!trained.ok) return this.#refuse(trained)
    const current = library()
    if (current === null) return this.#refuse(fail('live/no-library', OPEN_LIBRARY.notOpen))
    const sign = motion.source().facts().accelSign
    this.#isOpen = true
    const opened = await recogniser.openLive(trained.value.model, current.target, sign)
    if (!this.#pump.isCurrent(run)) return STOPPED
    this.#isOpen = opened.ok
    if (!opened.ok) return this.#refuse(opened)
    this.#energySpan = Math.ceil(ENERGY_SPAN_S * current.target.rateHz)
    this.#listen(run)
    return ok(null)
  }

  stop = (): Promise<void> => this.#halt(null)

  press = (down: boolean): void => {
    if (!this.running.peek()) return
    this.#buttons.push({ tMs: this.#pump.newestMs(), down })
  }

  #listen(run: number): void {
    this.#buttons = []
    batch(() => {
      this.events.value = []
      this.energy.value = new Uint32Array(0)
      this.sampleCount.value = 0
      this.running.value = true
    })
    this.#pump.listen(run, this.#parts.motion.source())
  }

  #take(update: LiveUpdate, startMs: number): void {
    const now = performance.now()
    batch(() => {
      this.sampleCount.value += update.energy.length
      this.energy.value = appendLast(this.energy.peek(), update.energy, this.#energySpan)
      this.phase.value = update.phase
      if (update.events.length === 0) return
      const fresh = update.events.map((event) => ({
        ...event,
        latencyMs: now - (startMs + event.endMs),
      }))
      this.events.value = [...fresh.reverse(), ...this.events.peek()].slice(0, MAX_EVENTS)
    })
  }

  /** Ends what runs, and what is only starting. */
  async #halt(why: string | null): Promise<void> {
    this.#pump.end()
    if (this.running.peek()) {
      batch(() => {
        this.running.value = false
        this.trouble.value = why
        this.phase.value = 'idle'
      })
    }
    if (!this.#isOpen) return
    this.#isOpen = false
    await this.#parts.recogniser.closeLive()
  }

  #refuse(failure: Failure): Failure {
    this.trouble.value = failure.message
    return failure
  }

  /** Stops when the source changes or falls silent, and when another library is opened. */
  #followSurroundings(): void {
    const { motion, library } = this.#parts
    let lastId: string | null = null
    effect(() => {
      const id = library()?.id ?? null
      if (id !== lastId) void this.#halt(null)
      lastId = id
    })
    effect(() => {
      const status = motion.status.value
      if (!this.running.peek() || status === 'running') return
      void this.#halt(motionWords(status) === null ? null : motionSentence(status))
    })
  }
}

function appendLast(before: Uint32Array, added: Uint32Array, span: number): Uint32Array {
  const joined = new Uint32Array(before.length + added.length)
  joined.set(before)
  joined.set(added, before.length)
  return joined.length > span ? joined.slice(-span) : joined
}
