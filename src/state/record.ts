import { computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { RecogniserClient } from '../recogniser/client'
import { recovered } from '../recording/facts'
import { Recorder } from '../recording/recorder'
import type { HeldRecording, OfferedTake, RecordPhase, RecordSetup } from '../recording/types'
import type { MotionSource } from '../sensors/motion-source'
import type { SimulatedSource } from '../sensors/simulated-source'
import type { Recording } from '../shared/model/library'
import { fail, type Result } from '../shared/model/result'
import type { SampleBlock } from '../shared/model/sample'
import { freeTesterCode } from '../shared/present/library-counts'
import { NOTICES } from '../shared/words/en/notices'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { UnfinishedRecording } from '../storage/store'
import type { MotionState, RecordState } from './app'
import { newId } from './id'
import { prefer, preferences } from './preferences'
import type { Shelf } from './shelf'

const TRACE_MS = 4000
/** The trace is drawn by hand and eye: faster than this shows nothing more. */
const TRACE_EVERY_MS = 33
const NO_LIBRARY = fail('record/no-library', OPEN_LIBRARY.recordNeedsOne)

export interface RecordParts {
  shelf: Shelf
  recogniser: RecogniserClient
  motion: MotionState
  simulated: SimulatedSource
}

/** Recording of takes and background: the recorder's doings as signals. */
export class RecordSlice implements RecordState {
  readonly phase = signal<RecordPhase>('idle')
  readonly testerCode = signal(preferences.peek().testerCode)
  readonly hand = signal(preferences.peek().hand)
  readonly elapsedMs = signal(0)
  readonly trace = signal<SampleBlock>({ tMs: new Float64Array(0), values: new Float32Array(0) })
  /** All that wait, of whatever library they were recorded for. */
  readonly #offers = signal<readonly OfferedTake[]>([])
  readonly #offersHere = computed(() => {
    const id = this.#parts.shelf.current.value?.id
    return this.#offers.value.filter(({ recording }) => recording.libraryId === id)
  })
  readonly offered = computed(() => this.#offersHere.value[0] ?? null)
  readonly waiting = computed(() => this.#offersHere.value.length)
  readonly unfinished = signal<UnfinishedRecording[]>([])
  readonly heldBack = signal<readonly HeldRecording[]>([])
  readonly #parts: RecordParts
  readonly #recorder: Recorder
  #keepsGood = false
  /** Takes kept without asking: tried once each, as the storage may be full. */
  readonly #tried = new Set<string>()

  constructor(parts: RecordParts) {
    this.#parts = parts
    const { store, notices } = parts.shelf
    this.#recorder = new Recorder({
      store,
      client: parts.recogniser,
      newId,
      deviceLabel: deviceLabel(),
      events: {
        onPhase: (phase) => {
          this.phase.value = phase
        },
        onOffered: (takes) => {
          this.#offers.value = takes
          for (const take of takes) {
            // What was there before is left to the person who was asked.
            if (this.#keepsGood) void this.#keepIfGood(take)
            else this.#tried.add(take.recording.id)
          }
        },
        onStored: (recording) => {
          if (recording.kind === 'background') notices.say(backgroundKept(recording))
          void this.#afterStored()
        },
        onHeldBack: (held) => {
          this.heldBack.value = held
        },
        onIgnored: (message) => notices.say(message),
        onTrouble: (failure) => notices.trouble(failure.message),
      },
    })
    this.#follow(parts.motion.kind)
    this.#avoidGeneratedCodes()
  }

  setTester: RecordState['setTester'] = (code, hand) => {
    this.testerCode.value = code
    this.hand.value = hand
    prefer({ testerCode: code, hand })
    const number = Number(/\d+/.exec(code)?.[0] ?? 1)
    this.#parts.simulated.setTester(number)
  }

  beginHold: RecordState['beginHold'] = (gestureId) => {
    this.#keepsGood = false
    return this.#with((setup) => this.#recorder.beginHold(setup, gestureId))
  }
  endHold = (): Promise<void> => this.#recorder.endHold()
  beginHandsFree: RecordState['beginHandsFree'] = (gestureId, keepGood = false) => {
    this.#keepsGood = keepGood
    return this.#with((setup) => this.#recorder.beginHandsFree(setup, gestureId))
  }
  beginBackground = (): Promise<Result<null>> =>
    this.#with((setup) => this.#recorder.beginBackground(setup))
  stop = (): Promise<void> => this.#recorder.stop()

  drop = async (): Promise<void> => {
    const id = this.offered.peek()?.recording.id
    if (id !== undefined) await this.#recorder.drop(id)
  }

  keep = async (): Promise<void> => {
    const id = this.offered.peek()?.recording.id
    if (id !== undefined) this.#parts.shelf.check(await this.#recorder.keep(id))
  }

  keepHeldBack = async (id: string): Promise<void> => {
    this.#parts.shelf.check(await this.#recorder.keepHeldBack(id))
  }
  dropHeldBack = (id: string): Promise<void> => this.#recorder.dropHeldBack(id)

  keepUnfinished = async (id: string): Promise<void> => {
    const { shelf } = this.#parts
    const item = this.unfinished.peek().find(({ recording }) => recording.id === id)
    if (item === undefined) return
    const kept = shelf.check(await shelf.store.finishUnfinished(id, recovered(item)))
    await this.readUnfinished()
    if (kept) await this.#afterStored()
  }

  dropUnfinished = async (id: string): Promise<void> => {
    await this.#parts.shelf.store.discardUnfinished(id)
    await this.readUnfinished()
  }

  /** Recordings that a kill of the page or the browser cut off. */
  async readUnfinished(): Promise<void> {
    this.unfinished.value = await this.#parts.shelf.store.unfinished()
  }

  /** Doubtful ones wait for a word; the good ones behind them do not. */
  async #keepIfGood({ recording: { id, gestureId }, quality }: OfferedTake): Promise<void> {
    if (this.#tried.has(id)) return
    if (quality.some(({ code }) => code !== 'good')) return
    const { shelf } = this.#parts
    this.#tried.add(id)
    if (!shelf.check(await this.#recorder.keep(id))) return
    const name = shelf.current.peek()?.gestures.find((one) => one.id === gestureId)?.name
    shelf.notices.say(NOTICES.takeKept(name), async () => {
      const isGone = shelf.check(await shelf.store.deleteRecordings([id]))
      await shelf.reloadRecordings()
      return isGone
    })
  }

  #with(begin: (setup: RecordSetup) => Promise<Result<null>>): Promise<Result<null>> {
    const library = this.#parts.shelf.current.peek()
    if (library === null) return Promise.resolve(NO_LIBRARY)
    const { id: libraryId, target, training } = library
    const testerCode = this.testerCode.peek()
    const trimToPress = training.segmentation === 'button'
    return begin({ libraryId, target, testerCode, hand: this.hand.peek(), trimToPress })
  }

  /** Own data deserves to be kept: the first stored recording is the moment to ask. */
  async #afterStored(): Promise<void> {
    const { shelf } = this.#parts
    await shelf.askToKeep()
    await shelf.reloadRecordings()
  }

  /** A tester of the demo is nobody: own takes under the same code would mix people and model. */
  #avoidGeneratedCodes(): void {
    effect(() => {
      const recordings = this.#parts.shelf.recordings.value
      const code = this.testerCode.peek()
      const isGenerated = recordings.some(
        (one) => one.source === 'generated' && one.testerCode === code,
      )
      if (!isGenerated) return
      const free = freeTesterCode(recordings.map((one) => one.testerCode))
      this.setTester(free, this.hand.peek())
    })
  }

  #follow(kind: ReadonlySignal<MotionSource['kind']>): void {
    let shownMs = 0
    let leave = () => {}
    kind.subscribe(() => {
      leave()
      const source = this.#parts.motion.source()
      this.#recorder.use(source)
      leave = source.subscribe(() => {
        const nowMs = performance.now()
        if (nowMs - shownMs < TRACE_EVERY_MS) return
        shownMs = nowMs
        this.trace.value = this.#recorder.trace(TRACE_MS)
        this.elapsedMs.value = this.#recorder.elapsedMs()
      })
    })
  }
}

function backgroundKept({ durationMs }: Recording): string {
  return NOTICES.backgroundKept(durationMs)
}

/** The platform's own word for itself, for people to read. */
export function deviceLabel(): string {
  const browser = globalThis.navigator as
    | (Navigator & { userAgentData?: { platform?: string } })
    | undefined
  return browser?.userAgentData?.platform || browser?.platform || NOTICES.unknownDevice
}
