import { median } from '../shared/statistics/summary'

/** Intervals that the rate is taken from: four seconds at 60 Hz. */
const REMEMBERED = 240
const NEEDED = 10

/**
 * Measures the rate of samples by the median of the intervals between them. The mean would count
 * every gap in: one missing sample in ten turns 60 Hz into 55.
 */
export class RateMeter {
  readonly #intervals: number[] = []
  #lastMs: number | null = null
  #next = 0

  add(tMs: number): void {
    if (this.#lastMs !== null && tMs > this.#lastMs) {
      this.#intervals[this.#next] = tMs - this.#lastMs
      this.#next = (this.#next + 1) % REMEMBERED
    }
    this.#lastMs = tMs
  }

  /** Hz over the last seconds; 0 while there are fewer than ten intervals. */
  rateHz(): number {
    return this.#intervals.length < NEEDED ? 0 : 1000 / median(this.#intervals)
  }
}
