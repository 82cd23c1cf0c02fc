import { Collector } from './collector'
import { readFrame } from './frame'

/** Runs that are collected side by side: a sender started anew costs nothing that was seen. */
const MAX_RUNS = 3

export type Seen =
  /** Told something new. */
  | 'new'
  /** Known already, or follows from what is known. */
  | 'repeat'
  /** A code, and none of ours. */
  | 'foreign'
  | 'complete'
  /** All frames are there and do not give what was sent: the run was dropped. */
  | 'unsound'

export interface Received {
  found: number
  blocks: number
}

/** Takes whatever codes a camera sees, in any order, and says when a run is whole. */
export class FrameReceiver {
  #runs: Collector[] = []

  /** Of the run seen last; null before the first frame. */
  get progress(): Received | null {
    const run = this.#runs[0]
    return run === undefined ? null : { found: run.found, blocks: run.blocks }
  }

  /** Content of the run seen last; null until it is whole. */
  content(): Uint8Array | null {
    return this.#runs[0]?.content() ?? null
  }

  see(text: string): Seen {
    const frame = readFrame(text)
    if (frame === null) return 'foreign'
    const run = this.#runs.find((one) => one.fits(frame)) ?? new Collector(frame)
    this.#runs = [run, ...this.#runs.filter((one) => one !== run)].slice(0, MAX_RUNS)
    const isNew = run.add(frame)
    if (run.found < run.blocks) return isNew ? 'new' : 'repeat'
    if (run.content() !== null) return 'complete'
    this.#runs.shift()
    return 'unsound'
  }
}
