import type {
  MotionFacts,
  MotionSample,
  MotionSource,
  MotionStatus,
} from '../sensors/motion-source'
import type { Background, Take } from '../shared/model/library'
import type { Failure } from '../shared/model/result'
import type { Store } from '../storage/store'
import { Capture } from './capture'
import { newBackground, newTake } from './facts'
import { SampleRing } from './sample-ring'
import { REMEMBERED_MS, TAIL_MS } from './timing'
import type { RecordSetup } from './types'

export interface IntakeDeps {
  store: Pick<Store, 'openJournal'>
  newId: () => string
  /** Goes into the recordings for people to read, such as the browser's platform. */
  deviceLabel: string
  onTrouble: (failure: Failure) => void
}

/** Where samples come in: remembers the last ones and hands each to whatever is recording. */
export class Intake {
  readonly ring = new SampleRing(REMEMBERED_MS)
  readonly #deps: IntakeDeps
  readonly #source: MotionSource
  readonly #captures = new Set<Capture>()
  readonly #listeners = new Set<(sample: MotionSample) => void>()
  readonly #leave: (() => void)[]

  constructor(deps: IntakeDeps, source: MotionSource) {
    this.#deps = deps
    this.#source = source
    this.#leave = [source.subscribe(this.#onSample), source.onStatus(this.#onStatus)]
  }

  close(): void {
    for (const leave of this.#leave) leave()
  }

  status(): MotionStatus {
    return this.#source.status()
  }

  facts(): MotionFacts {
    return this.#source.facts()
  }

  /** Begins to capture a take with the samples since a time, also one that has passed. */
  captureTake(setup: RecordSetup, gestureId: string, fromMs: number): Capture {
    return this.#capture(newTake(this.#newFacts(setup), gestureId), fromMs)
  }

  captureBackground(setup: RecordSetup, fromMs: number): Capture {
    return this.#capture(newBackground(this.#newFacts(setup)), fromMs)
  }

  /** No more samples for a capture. */
  release(capture: Capture): void {
    this.#captures.delete(capture)
  }

  listen(onSample: (sample: MotionSample) => void): () => void {
    this.#listeners.add(onSample)
    return () => this.#listeners.delete(onSample)
  }

  /** Resolves with the first sample at or after a time, or when none came for a while. */
  until(tMs: number): Promise<void> {
    if (this.ring.newestMs() >= tMs) return Promise.resolve()
    return new Promise((resolve) => {
      const done = () => {
        clearTimeout(timer)
        leave()
        resolve()
      }
      const timer = setTimeout(done, 2 * TAIL_MS)
      const leave = this.listen((sample) => {
        if (sample.tMs >= tMs) done()
      })
    })
  }

  #newFacts(setup: RecordSetup) {
    const { newId, deviceLabel } = this.#deps
    return { id: newId(), setup, source: this.#source, deviceLabel }
  }

  #capture(recording: Take | Background, fromMs: number): Capture {
    const { store, onTrouble } = this.#deps
    const capture = new Capture(recording, this.ring.since(fromMs), store, onTrouble)
    this.#captures.add(capture)
    return capture
  }

  readonly #onSample = (sample: MotionSample): void => {
    this.ring.push(sample)
    for (const capture of this.#captures) capture.add(sample)
    for (const listener of [...this.#listeners]) listener(sample)
  }

  /** When readings stop the page may be about to go: what is there is written at once. */
  readonly #onStatus = (status: MotionStatus): void => {
    if (status === 'running') return
    for (const capture of this.#captures) void capture.flush()
  }
}
