import type { Core } from '../core/core'
import { distancesBetween, type Example, type WarpSettings } from './examples'

/** Of so many segments distances are kept at most: 100 MB. */
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
  /** Row by row, in the order of the segments, with room for `room` in a row. */
  private square = new Uint32Array(0)
  private room = 0
  private settings = ''
  /** Given out again with every answer: it is the largest piece of a round's memory. */
  private table = new Float64Array(0)

  /** What distancesBetween gives, until the next time. */
  between(core: Core, examples: readonly Example[], settings: WarpSettings): Float64Array {
    if (examples.length > MOST_KEPT) return distancesBetween(core, examples, settings)
    this.make(examples, settings)
    const known = this.series.length
    const at = Int32Array.from(examples, (example) => this.slotOf(example))
    this.compute(core, known, settings)
    const n = examples.length
    if (this.table.length < n * n) this.table = new Float64Array(n * n)
    const table = this.table.subarray(0, n * n)
    for (let i = 0, to = 0; i < n; i++) {
      const row = at[i]! * this.room
      for (let j = 0; j < n; j++, to++) {
        const distance = this.square[row + at[j]!]!
        table[to] = distance === NONE ? Number.POSITIVE_INFINITY : distance
      }
    }
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
    this.makeRoom(count, known)
    if (known === 0) {
      const all = core.distances(this.series, settings)
      for (let i = 0; i < count; i++) {
        for (let j = 0; j < count; j++) this.square[i * this.room + j] = keptOf(all[i * count + j]!)
      }
      return
    }
    const rows = core.dtwMatrix(this.series.slice(known), this.series, settings)
    for (let i = known; i < count; i++) {
      const from = (i - known) * count
      this.keep(i, rows.subarray(from, from + i))
    }
  }

  private makeRoom(count: number, known: number): void {
    if (count <= this.room) return
    const room = Math.min(MOST_KEPT, count + (count >> 3))
    const square = new Uint32Array(room * room)
    for (let i = 0; i < known; i++) {
      square.set(this.square.subarray(i * this.room, i * this.room + known), i * room)
    }
    this.square = square
    this.room = room
  }

  /** Distances of a segment to those before it, and theirs to it. */
  private keep(slot: number, distances: Float64Array): void {
    const { square, room } = this
    for (let j = 0; j < slot; j++) {
      square[slot * room + j] = square[j * room + slot] = keptOf(distances[j]!)
    }
  }
}

function keptOf(distance: number): number {
  return distance === Number.POSITIVE_INFINITY ? NONE : distance
}

function isSame(a: Int8Array, b: Int8Array): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i])
}
