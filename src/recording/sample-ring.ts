import type { MotionSample } from '../sensors/motion-source'

/** The samples of the last moments, by time. */
export class SampleRing {
  #samples: MotionSample[] = []

  constructor(readonly spanMs: number) {}

  push(sample: MotionSample): void {
    this.#samples.push(sample)
    // Old samples are cut off in large pieces, so that a push costs the same on average.
    if (sample.tMs - this.#samples[0]!.tMs > 2 * this.spanMs) {
      this.#samples = this.since(sample.tMs - this.spanMs)
    }
  }

  clear(): void {
    this.#samples = []
  }

  /** Time of the newest sample; 0 when there is none. */
  newestMs(): number {
    return this.#samples.at(-1)?.tMs ?? 0
  }

  /** Samples at or after a time, oldest first. */
  since(tMs: number): MotionSample[] {
    const first = this.#samples.findIndex((sample) => sample.tMs >= tMs)
    return first < 0 ? [] : this.#samples.slice(first)
  }
}
