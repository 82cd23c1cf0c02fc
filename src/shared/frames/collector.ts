import { blockCount, type Frame } from './frame'
import { has, mixOf, xorInto } from './mix'
import { streamOf } from './sender'

/** An equation over the blocks: these, put together, give this data. */
interface Row {
  mix: Uint32Array
  data: Uint8Array
}

/**
 * Collects frames of one run until its content is known: Gauss's elimination over GF(2), a row at a
 * time. Row p has block p as its first.
 */
export class Collector {
  readonly blocks: number
  readonly #first: Frame
  readonly #rows: (Row | undefined)[]
  #found = 0

  constructor(first: Frame) {
    this.#first = first
    this.blocks = blockCount(first)
    this.#rows = new Array(this.blocks)
  }

  /** Frames that told something new; all is there when they are as many as the blocks. */
  get found(): number {
    return this.#found
  }

  /** Whether a frame belongs here: one of another cut of the same content does not. */
  fits(frame: Frame): boolean {
    const { stream, contentBytes, blockBytes } = this.#first
    return (
      frame.stream === stream &&
      frame.contentBytes === contentBytes &&
      frame.blockBytes === blockBytes
    )
  }

  /** Whether the frame told something new. */
  add(frame: Frame): boolean {
    const row = { mix: mixOf(frame.number, this.blocks), data: frame.data.slice() }
    for (let block = 0; block < this.blocks; block++) {
      if (!has(row.mix, block)) continue
      const known = this.#rows[block]
      if (known === undefined) {
        this.#rows[block] = row
        this.#found++
        return true
      }
      xorInto(row.mix, known.mix)
      xorInto(row.data, known.data)
    }
    return false
  }

  /** The content, once all is there; null before, and when it is not what was sent. */
  content(): Uint8Array | null {
    if (this.#found < this.blocks) return null
    this.#solve()
    const { contentBytes, blockBytes, stream } = this.#first
    const padded = new Uint8Array(this.blocks * blockBytes)
    this.#rows.forEach((row, block) => {
      padded.set(row!.data, block * blockBytes)
    })
    const content = padded.slice(0, contentBytes)
    return streamOf(content) === stream ? content : null
  }

  /** From the last block up, each row is freed from the blocks after its first. */
  #solve(): void {
    for (let block = this.blocks - 1; block >= 0; block--) {
      const row = this.#rows[block]!
      for (let later = block + 1; later < this.blocks; later++) {
        if (!has(row.mix, later)) continue
        const known = this.#rows[later]!
        xorInto(row.mix, known.mix)
        xorInto(row.data, known.data)
      }
    }
  }
}
