import { mirrorUpper } from '../core/batch'
import type { Core } from '../core/core'
import { distancesBetween, type Example, type WarpSettings } from './examples'

/** Of so many segments distances are kept at most: 50 MB. */
const MOST_KEPT = 5000
/** Kept for a distance that is infinite. */
const NONE = 0xffffffff

/**
 * Distances between segments, for rounds that have most of their segments in common: where a take was
 * cut and normalised to the same bytes as in a round before, its distances are not computed again.
 * They follow from the bytes alone, so a round learns nothing of the others.
 */
export class KnownDistances {
  /** Kept segments by the take they came from, which may have been cut in several ways. */
  private readonly slots = new Map<string, number[]>()
  private readonly series: Int8Array[] = []
  /** Lower half, row by row, in the order of the segments. */
  private half = new Uint32Array(0)
  private settings = ''
  /** Given out again with every answer: it is the largest piece of a round's memory. */
  private table = new Float64Array(0)

  /** What distancesBetween gives, until the next time. */
  between(core: Core, examples: readonly Example[], settings: WarpSettings): Float64Array {
    if (examples.length > MOST_KEPT) return distancesBetween(core, examples, settings)
    this.make(examples, settings)
    const known = this.series.length
    const at = examples.map((example) => this.slotOf(example))
    this.compute(core, known, settings)
    const n = examples.length
    if (this.table.length < n * n) this.table = new Float64Array(n * n)
    const table = this.table.subarray(0, n * n)
    for (let i = 0; i < n; i++) {
      table[i * n + i] = 0
      for (let j = i + 1; j < n; j++) {
        const [a, b] = [at[i]!, at[j]!]
        const distance = this.half[a > b ? placeOf(a, b) : placeOf(b, a)]!
        table[i * n + j] = distance === NONE ? Number.POSITIVE_INFINITY : distance
      }
    }
    mirrorUpper(table, n)
    return table
  }

  /** Room for the examples, with what is known where that goes together. */
  private make(examples: readonly Example[], settings: WarpSettings): void {
    const wanted = JSON.stringify([settings, examples[0]?.query.length])
    const fresh = examples.filter((example) => this.find(example) === undefined).length
    if (wanted === this.settings && this.series.length + fresh <= MOST_KEPT) return
    this.slots.clear()
    this.series.length = 0
    this.settings = wanted
  }

  private find({ id, query }: Example): number | undefined {
    return this.slots.get(id)?.find((slot) => isSame(this.series[slot]!, query))
  }

  private slotOf(example: Example): number {
    const found = this.find(example)
    if (found !== undefined) return found
    const slot = this.series.push(example.query) - 1
    this.slots.set(example.id, [...(this.slots.get(example.id) ?? []), slot])
    return slot
  }

  /** Distances of the segments from `known` on to all before them. */
  private compute(core: Core, known: number, settings: WarpSettings): void {
    const count = this.series.length
    if (known === count) return
    const half = new Uint32Array(placeOf(count, 0))
    half.set(this.half.subarray(0, placeOf(known, 0)))
    this.half = half
    if (known === 0) {
      const all = core.distances(this.series, settings)
      for (let i = 0; i < count; i++) this.keep(i, all.subarray(i * count, i * count + i))
      return
    }
    const rows = core.dtwMatrix(this.series.slice(known), this.series, settings)
    for (let i = known; i < count; i++) {
      const from = (i - known) * count
      this.keep(i, rows.subarray(from, from + i))
    }
  }

  private keep(slot: number, distances: Float64Array): void {
    const from = placeOf(slot, 0)
    for (const [j, distance] of distances.entries()) {
      this.half[from + j] = distance === Number.POSITIVE_INFINITY ? NONE : distance
    }
  }
}

/** Where the distance of two segments is kept, the later one first. */
function placeOf(later: number, earlier: number): number {
  return (later * (later - 1)) / 2 + earlier
}

function isSame(a: Int8Array, b: Int8Array): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i])
}
