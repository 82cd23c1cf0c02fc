import type { MotionSample } from '../sensors/motion-source'
import { AXES, type SampleBlock } from '../shared/model/sample'

const EMPTY: SampleBlock = { tMs: new Float64Array(0), values: new Float32Array(0) }

/** Collects single readings into blocks; times become ms from the first reading after `reset`. */
export class SampleBuffer {
  #startMs: number | null = null
  #newestMs = 0
  #times: number[] = []
  #values: number[] = []

  /** Sensor time of the first reading, which is 0 ms in the blocks; null before there is one. */
  get startMs(): number | null {
    return this.#startMs
  }

  /** Time of the newest reading as in the blocks, ms; stays when the readings are taken. */
  get newestMs(): number {
    return this.#newestMs
  }

  get length(): number {
    return this.#times.length
  }

  push(sample: MotionSample): void {
    this.#startMs ??= sample.tMs
    this.#newestMs = sample.tMs - this.#startMs
    this.#times.push(this.#newestMs)
    this.#values.push(sample.ax, sample.ay, sample.az, sample.gx, sample.gy, sample.gz)
  }

  /** What was collected since the last call. */
  take(): SampleBlock {
    if (this.#times.length === 0) return EMPTY
    const block = this.peek()
    this.#times = []
    this.#values = []
    return block
  }

  /** Forgets what is older than `spanMs` before the newest reading. */
  keepLast(spanMs: number): void {
    const newest = this.#times.at(-1)
    if (newest === undefined) return
    const first = this.#times.findIndex((time) => time >= newest - spanMs)
    this.#times.splice(0, first)
    this.#values.splice(0, first * AXES)
  }

  /** A copy of what is held. */
  peek(): SampleBlock {
    return { tMs: Float64Array.from(this.#times), values: Float32Array.from(this.#values) }
  }

  reset(): void {
    this.#startMs = null
    this.#newestMs = 0
    this.#times = []
    this.#values = []
  }
}
