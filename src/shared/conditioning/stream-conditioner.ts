import type { AccelSign, Gap } from '../model/library'
import { AXES, type CountBlock, type SampleBlock } from '../model/sample'
import type { Target } from '../model/target'
import { Quantiser } from './counts'
import { Resampler } from './resampler'

/**
 * Turns phone samples into the counts that the target's sensor would have read: sign of the
 * accelerometer set right, resampled to the target's even rate, turned by the mounting, scaled by
 * its sensitivities, rounded (halves away from zero) and clipped to int16.
 *
 * Feed blocks of any length in order; any split gives the same counts. The same class serves live
 * recognition and stored recordings.
 *
 * A value that is not finite is replaced by the last finite one of its axis (0 at first). Samples
 * that go back in time are dropped. Holes are bridged by straight lines up to PAUSE_LIMIT_MS, and
 * those longer than GAP_LIMIT_MS are listed in `gaps`.
 */
export class StreamConditioner {
  readonly #rateHz: number
  readonly #accelSign: 1 | -1
  readonly #resampler: Resampler
  readonly #quantiser: Quantiser
  readonly #held = new Float64Array(AXES)
  #out = new Int16Array(AXES * 64)
  #filled = 0
  #badValueCount = 0

  /** accelSign 0 (not found out) is taken as the W3C sign. */
  constructor(target: Target, accelSign: AccelSign) {
    this.#rateHz = target.rateHz
    this.#accelSign = accelSign === -1 ? -1 : 1
    this.#quantiser = new Quantiser(target)
    this.#resampler = new Resampler(target.rateHz, (row) => this.#append(row))
  }

  /** Takes samples and gives the counts that are certain now; often none. */
  push(block: SampleBlock): CountBlock {
    const clippedBefore = this.#quantiser.clippedCount
    for (let i = 0; i < block.tMs.length; i++) {
      for (let axis = 0; axis < AXES; axis++) {
        const value = block.values[AXES * i + axis]!
        if (!Number.isFinite(value)) this.#badValueCount++
        else this.#held[axis] = axis < 3 ? this.#accelSign * value : value
      }
      this.#resampler.push(block.tMs[i]!, this.#held)
    }
    return this.#take(clippedBefore)
  }

  /** Gives what is left, up to the time of the last sample. */
  flush(): CountBlock {
    const clippedBefore = this.#quantiser.clippedCount
    this.#resampler.flush()
    return this.#take(clippedBefore)
  }

  /** Time of conditioned sample `index` (from the start) on the clock of the samples given, ms. */
  timeOfMs(index: number): number {
    return this.#resampler.timeOfMs(index)
  }

  /**
   * How long counts wait for later samples at most, ms: 1.5 periods of the target (28.8 ms at 52 Hz),
   * plus up to one interval of the source; one period (19.2 ms) when readings are further apart than
   * half a period, as a phone's are. Times are not shifted by it.
   */
  get delayMs(): number {
    return this.#resampler.delayMs
  }

  /** Holes longer than GAP_LIMIT_MS so far. */
  get gaps(): readonly Gap[] {
    return this.#resampler.gaps
  }

  /** Samples dropped for their time so far. */
  get misplacedCount(): number {
    return this.#resampler.misplacedCount
  }

  /** Values replaced because they were not finite so far. */
  get badValueCount(): number {
    return this.#badValueCount
  }

  #append(row: Float64Array): void {
    if (this.#filled + AXES > this.#out.length) {
      const larger = new Int16Array(2 * this.#out.length)
      larger.set(this.#out)
      this.#out = larger
    }
    this.#quantiser.write(row, this.#out, this.#filled)
    this.#filled += AXES
  }

  #take(clippedBefore: number): CountBlock {
    const counts = this.#out.slice(0, this.#filled)
    this.#filled = 0
    return {
      counts,
      rateHz: this.#rateHz,
      clippedCount: this.#quantiser.clippedCount - clippedBefore,
    }
  }
}
