/** Readings come late when the page is busy, but not by this much, ms: more is a jump of the clock. */
const JUMP_MS = 2000

/**
 * Time of readings that goes on evenly when the sensor's clock is set, or starts again, while it
 * runs: a jump against the page's own monotonic clock is taken out. Without it, readings after a
 * jump back would be refused as old until the clock had caught up, and one forwards would be a gap.
 */
export class SteadyClock {
  #offsetMs = 0
  #lastEventMs: number | null = null
  #lastNowMs = 0

  /**
   * @param eventMs the reading's own time
   * @param nowMs `performance.now()` as it is taken up
   */
  timeOf(eventMs: number, nowMs: number): number {
    if (this.#lastEventMs !== null) {
      const jumpMs = eventMs - this.#lastEventMs - (nowMs - this.#lastNowMs)
      if (Math.abs(jumpMs) > JUMP_MS) this.#offsetMs -= jumpMs
    }
    this.#lastEventMs = eventMs
    this.#lastNowMs = nowMs
    return eventMs + this.#offsetMs
  }
}
