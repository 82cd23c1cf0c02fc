import type { MotionSource } from '../sensors/motion-source'
import type { Result } from '../shared/model/result'
import type { SampleBlock } from '../shared/model/sample'
import { NOTICES } from '../shared/words/en/notices'
import { SampleBuffer } from './sample-buffer'

/** Samples waiting for the worker; more means that it cannot keep up. About 30 s at 60 Hz. */
const MAX_WAITING = 1800

export interface PumpParts<T> {
  /** Gives samples to the worker; times count from the first reading since the start, ms. */
  push(samples: SampleBlock): Promise<Result<T>>
  /** @param startMs sensor time of that first reading */
  onAnswer(answer: T, startMs: number): void
  /** The worker refused, or cannot keep up; for people. */
  onBroken(why: string): void
}

/**
 * Readings on their way to a worker. A start takes several waits, for permission, training and the worker:
 * it takes a number by `begin` and goes on only while `isCurrent` says that neither an end nor another start
 * has come since.
 */
export class SamplePump<T> {
  readonly #parts: PumpParts<T>
  readonly #waiting = new SampleBuffer()
  #leave: () => void = () => undefined
  #inFlight = false
  /** Counts starts and ends, so that late answers of an earlier run are known. */
  #run = 0

  constructor(parts: PumpParts<T>) {
    this.#parts = parts
  }

  /** Ends whatever runs or starts, and gives the number of a new start. */
  begin(): number {
    this.end()
    return this.#run
  }

  isCurrent(run: number): boolean {
    return run === this.#run
  }

  end(): void {
    this.#run += 1
    this.#leave()
    this.#leave = () => undefined
  }

  /** From now on the source's readings go to the worker, until `end` or another start. */
  listen(run: number, source: MotionSource): void {
    if (!this.isCurrent(run)) return
    this.#leave()
    this.#waiting.reset()
    this.#leave = source.subscribe((sample) => {
      this.#waiting.push(sample)
      if (this.#waiting.length > MAX_WAITING) this.#parts.onBroken(NOTICES.tooSlow)
      else void this.#pump(run)
    })
  }

  /** Time of the newest reading as the worker counts it, ms; 0 before there is one. */
  newestMs(): number {
    return this.#waiting.newestMs
  }

  /** One call at a time; what comes meanwhile goes with the next. */
  async #pump(run: number): Promise<void> {
    if (this.#inFlight) return
    this.#inFlight = true
    try {
      while (this.isCurrent(run) && this.#waiting.length > 0) {
        const startMs = this.#waiting.startMs ?? 0
        const answer = await this.#parts.push(this.#waiting.take())
        if (!this.isCurrent(run)) return
        if (answer.ok) this.#parts.onAnswer(answer.value, startMs)
        else this.#parts.onBroken(answer.message)
      }
    } finally {
      this.#inFlight = false
    }
  }
}
