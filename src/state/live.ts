import { batch, effect, signal } from '@preact/signals'
import type { RecogniserClient } from '../recogniser/client'
import type { TrainedModel } from '../shared/model/evaluation'
import type { Library } from '../shared/model/library'
import { fail, ok, type Result } from '../shared/model/result'
import type { LiveUpdate } from '../shared/protocol/recogniser'
import type { LiveState, MotionState } from './app'
import { motionSentence, motionWords } from './motion-words'
import { SampleBuffer } from './sample-buffer'

const MAX_EVENTS = 50
/** Motion energy kept for the view, in seconds. */
const ENERGY_SPAN_S = 6
/** Samples waiting for the worker; more means that it cannot keep up. About 30 s at 60 Hz. */
const MAX_WAITING = 1800

export interface LiveParts {
  recogniser: RecogniserClient
  motion: MotionState
  library: () => Library | null
  train: () => Promise<Result<TrainedModel>>
}

/** Live recognition with the model that is exported, in the worker. */
export function createLive({ recogniser, motion, library, train }: LiveParts): LiveState {
  const running = signal(false)
  const events = signal<LiveState['events']['value']>([])
  const energy = signal<Uint32Array>(new Uint32Array(0))
  const sampleCount = signal(0)
  const phase = signal<LiveState['phase']['value']>('idle')
  const trouble = signal<string | null>(null)
  const waiting = new SampleBuffer()
  let energySpan = 0
  let unsubscribe: (() => void) | null = null
  let inFlight = false
  let run = 0

  const take = (update: LiveUpdate, startMs: number) => {
    const now = performance.now()
    batch(() => {
      sampleCount.value += update.energy.length
      energy.value = appendLast(energy.peek(), update.energy, energySpan)
      phase.value = update.phase
      if (update.events.length === 0) return
      const fresh = update.events.map((event) => ({
        ...event,
        latencyMs: now - (startMs + event.endMs),
      }))
      events.value = [...fresh.reverse(), ...events.peek()].slice(0, MAX_EVENTS)
    })
  }

  const pump = async (thisRun: number) => {
    if (inFlight) return
    inFlight = true
    try {
      while (thisRun === run && waiting.length > 0) {
        const startMs = waiting.startMs ?? 0
        const answer = await recogniser.pushLive(waiting.take())
        if (thisRun !== run) return
        if (answer.ok) take(answer.value, startMs)
        else await halt(answer.message)
      }
    } finally {
      inFlight = false
    }
  }

  const halt = async (why: string | null) => {
    if (!running.peek()) return
    run += 1
    unsubscribe?.()
    unsubscribe = null
    batch(() => {
      running.value = false
      trouble.value = why
      phase.value = 'idle'
    })
    await recogniser.closeLive()
  }

  const listen = () => {
    const thisRun = run
    unsubscribe = motion.source().subscribe((sample) => {
      waiting.push(sample)
      if (waiting.length > MAX_WAITING) {
        void halt(
          'This phone could not keep up with the readings; close other pages and start again.',
        )
      } else void pump(thisRun)
    })
  }

  const refuse = (failure: Result<never>): Result<never> => {
    if (!failure.ok) trouble.value = failure.message
    return failure
  }

  const start = async (): Promise<Result<null>> => {
    if (running.peek()) return ok(null)
    trouble.value = null
    // Permission hangs on the tap that led here, so the sensor comes before the training.
    const reached = await motion.start()
    if (reached !== 'running') return refuse(fail('live/sensor', motionSentence(reached)))
    const trained = await train()
    if (!trained.ok) return refuse(trained)
    const current = library()
    if (current === null) return refuse(fail('live/no-library', 'There is no library open.'))
    const sign = motion.source().facts().accelSign
    const opened = await recogniser.openLive(trained.value.model, current.target, sign)
    if (!opened.ok) return refuse(opened)
    run += 1
    waiting.reset()
    energySpan = Math.ceil(ENERGY_SPAN_S * current.target.rateHz)
    batch(() => {
      events.value = []
      energy.value = new Uint32Array(0)
      sampleCount.value = 0
      running.value = true
    })
    listen()
    return ok(null)
  }

  followSurroundings(motion, library, running, halt)
  return { running, events, energy, sampleCount, phase, trouble, start, stop: () => halt(null) }
}

/** Stops when the source changes or falls silent, and when another library is opened. */
function followSurroundings(
  motion: MotionState,
  library: () => Library | null,
  running: { peek(): boolean },
  halt: (why: string | null) => Promise<void>,
): void {
  let lastId: string | null = null
  effect(() => {
    const id = library()?.id ?? null
    if (id !== lastId) void halt(null)
    lastId = id
  })
  effect(() => {
    const status = motion.status.value
    if (!running.peek() || status === 'running') return
    void halt(motionWords(status) === null ? null : motionSentence(status))
  })
}

function appendLast(before: Uint32Array, added: Uint32Array, span: number): Uint32Array {
  const joined = new Uint32Array(before.length + added.length)
  joined.set(before)
  joined.set(added, before.length)
  return joined.length > span ? joined.slice(-span) : joined
}
