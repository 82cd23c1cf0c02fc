import type { Gap } from '../model/library'
import { AXES } from '../model/sample'
import { KERNEL_HALF_WIDTH, kernelIntegral, kernelMoment } from './kernel'
import { GAP_LIMIT_MS } from './timing'

/**
 * After a pause this long nothing is put in between: the even samples end, and begin anew with the
 * next sample. A phone that slept for an hour must not count as an hour of rest.
 */
export const PAUSE_LIMIT_MS = 2000

/** Times within this of each other are the same instant; far below any sensor's clock. */
const TIME_GRAIN_MS = 1e-6

/**
 * How far behind an output a slow source must have come, in output periods. The last half period of
 * the kernel weighs -2 %, and where readings are wider apart than that there would be one straight
 * line in it anyway: the line of the last two readings stands for it, and the answer comes sooner.
 */
const EARLY = 1

/** Even samples without a pause between them. */
interface Stretch {
  firstIndex: number
  startMs: number
}

/**
 * Turns samples at uneven times into samples at an even rate. The source is taken as straight lines
 * between its samples and multiplied with the kernel, integrated exactly: uneven spacing, several
 * samples at one time and holes need no case of their own. A source faster than the output is
 * low-passed by the kernel before it is thinned out; a slower one is interpolated.
 *
 * Output k stands at the very time of the source, without shift; it is ready when the source has
 * come KERNEL_HALF_WIDTH periods further, a slow source EARLY periods. Before the first and behind the last sample of a stretch
 * the source is taken as constant.
 */
export class Resampler {
  readonly #periodMs: number
  readonly #emit: (row: Float64Array) => void
  /** Samples that outputs to come can still need; row-major values. */
  #times: number[] = []
  #values: number[] = []
  #stretches: Stretch[] = []
  #next = 0
  #row = new Float64Array(AXES)
  readonly gaps: Gap[] = []
  /** Samples dropped because they stand before an earlier one or have no time. */
  misplacedCount = 0

  /** emit gets each output row in turn; it is valid during the call only. */
  constructor(rateHz: number, emit: (row: Float64Array) => void) {
    this.#periodMs = 1000 / rateHz
    this.#emit = emit
  }

  /** How far the source must have come behind an output's time at most, ms. */
  get delayMs(): number {
    return KERNEL_HALF_WIDTH * this.#periodMs
  }

  /** The same for a source whose last two samples stand so far apart. */
  #delayAfter(intervalMs: number): number {
    const isSlow = intervalMs >= (KERNEL_HALF_WIDTH - EARLY) * this.#periodMs
    return (isSlow ? EARLY : KERNEL_HALF_WIDTH) * this.#periodMs
  }

  /** Adds one sample: its time and AXES finite values. */
  push(tMs: number, values: ArrayLike<number>): void {
    const last = this.#times.at(-1)
    if (!Number.isFinite(tMs)) {
      this.misplacedCount++
      return
    }
    if (last === undefined || Math.abs(tMs - last) > PAUSE_LIMIT_MS) this.#begin(tMs)
    else if (tMs < last) {
      this.misplacedCount++
      return
    }
    if (last !== undefined && tMs - last > GAP_LIMIT_MS) {
      this.gaps.push({ startMs: last, endMs: tMs })
    }
    this.#times.push(tMs)
    for (let axis = 0; axis < AXES; axis++) this.#values.push(values[axis]!)
    const delayMs = this.#delayAfter(this.#times.length > 1 ? tMs - last! : 0)
    while (this.timeOfMs(this.#next) + delayMs <= tMs) this.#output(true)
    this.#forget()
  }

  /** Gives the outputs up to the last sample, as if it stayed; the next sample begins a stretch. */
  flush(): void {
    const last = this.#times.at(-1)
    if (last === undefined) return
    while (this.timeOfMs(this.#next) <= last + TIME_GRAIN_MS) this.#output(false)
    this.#times = []
    this.#values = []
  }

  /** Time of output k on the clock of the source, ms; NaN before the first sample. */
  timeOfMs(index: number): number {
    let i = this.#stretches.length - 1
    while (i > 0 && this.#stretches[i]!.firstIndex > index) i--
    const stretch = this.#stretches[i]
    if (stretch === undefined) return Number.NaN
    return stretch.startMs + (index - stretch.firstIndex) * this.#periodMs
  }

  #begin(tMs: number): void {
    this.flush()
    this.#stretches.push({ firstIndex: this.#next, startMs: tMs })
  }

  /**
   * One output: Σ over the lines of the source of ∫ kernel × line, in output periods around it.
   * goesOn: the last line goes on behind the last sample; otherwise the last value stays.
   */
  #output(goesOn: boolean): void {
    const centre = this.timeOfMs(this.#next)
    const place = (i: number) => (this.#times[i]! - centre) / this.#periodMs
    const row = this.#row.fill(0)
    const count = this.#times.length
    const total = kernelIntegral(KERNEL_HALF_WIDTH)
    const before = place(0)
    if (before > -KERNEL_HALF_WIDTH) this.#add(row, 0, kernelIntegral(before) + total)
    // Where a line ends the next one begins, with the same integrals.
    let [to, end, areaHigh, momentHigh] = [before, Number.NaN, 0, 0]
    for (let i = 0; i + 1 < count; i++) {
      const from = to
      to = place(i + 1)
      const low = Math.max(from, -KERNEL_HALF_WIDTH)
      const high = Math.min(to, KERNEL_HALF_WIDTH)
      if (low >= high) continue
      const areaLow = low === end ? areaHigh : kernelIntegral(low)
      const momentLow = low === end ? momentHigh : kernelMoment(low)
      end = high
      areaHigh = kernelIntegral(high)
      momentHigh = kernelMoment(high)
      const area = areaHigh - areaLow
      const moment = momentHigh - momentLow
      const share = (moment - from * area) / (to - from)
      this.#add(row, i, area - share)
      this.#add(row, i + 1, share)
    }
    const after = place(count - 1)
    if (after < KERNEL_HALF_WIDTH) {
      const area = total - kernelIntegral(after)
      const lean = goesOn ? leanOf(after, place(count - 2), area) : 0
      this.#add(row, count - 1, area + lean)
      if (lean !== 0) this.#add(row, count - 2, -lean)
    }
    this.#next++
    this.#emit(row)
  }

  #add(row: Float64Array, sample: number, weight: number): void {
    for (let axis = 0; axis < AXES; axis++) {
      row[axis]! += weight * this.#values[AXES * sample + axis]!
    }
  }

  /** Drops samples that end before the next output's kernel begins. */
  #forget(): void {
    const needed = this.timeOfMs(this.#next) - this.delayMs
    let old = 0
    while (old + 1 < this.#times.length && this.#times[old + 1]! < needed) old++
    if (old === 0) return
    this.#times.splice(0, old)
    this.#values.splice(0, AXES * old)
  }
}

/** What the second last sample's weight passes to the last one when their line goes on to the end. */
function leanOf(after: number, before: number, area: number): number {
  if (!(after > before)) return 0
  const moment = kernelMoment(KERNEL_HALF_WIDTH) - kernelMoment(after)
  return (moment - after * area) / (after - before)
}
