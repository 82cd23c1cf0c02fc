import type { MotionSample } from '../sensors/motion-source'
import type { Recording, Trim } from '../shared/model/library'
import { type Failure, ok, type Result } from '../shared/model/result'
import type { SampleBlock } from '../shared/model/sample'
import { joinBlocks } from '../storage/chunk'
import { toFailure } from '../storage/failure'
import type { Journal, Store } from '../storage/store'
import { toBlock } from './block'
import { JOURNAL_EVERY_MS } from './timing'

/**
 * One recording while it runs: samples come in one by one and go to the journal every second. All
 * of it stays in memory as well: what could not be written is tried again with the next second, and
 * when the database is deleted under it, everything goes into a new journal.
 */
export class Capture {
  /** Settles when the journal is there, or could not be opened at the first try. */
  readonly opened: Promise<Result<Journal>>
  #journal: Promise<Result<Journal>>
  readonly #blocks: SampleBlock[] = []
  /** How many of the blocks the journal has. */
  #stored = 0
  #pending: MotionSample[]
  /** Time of the first sample on the source's clock; the recording's zero. */
  #originMs: number | null
  #queue: Promise<Result<null>> = Promise.resolve(ok(null))
  #queued = false

  /** @param leadIn samples that came before and belong to the recording; gives the time 0. */
  constructor(
    readonly recording: Recording,
    leadIn: readonly MotionSample[],
    readonly store: Pick<Store, 'openJournal'>,
    readonly onTrouble: (failure: Failure) => void,
  ) {
    this.#pending = [...leadIn]
    this.#originMs = leadIn[0]?.tMs ?? null
    this.opened = store.openJournal(recording)
    this.#journal = this.opened
  }

  add(sample: MotionSample): void {
    this.#originMs ??= sample.tMs
    this.#pending.push(sample)
    const isDue = sample.tMs - this.#pending[0]!.tMs >= JOURNAL_EVERY_MS
    if (isDue && !this.#queued) void this.flush()
  }

  /** Writes all that is not written yet. */
  flush(): Promise<Result<null>> {
    this.#queued = true
    this.#queue = this.#queue.then(() => this.#write())
    return this.#queue
  }

  /** All samples so far. */
  samples(): SampleBlock {
    return joinBlocks([...this.#blocks, this.#toBlock(this.#pending)])
  }

  /** Two times of the source's clock as the recording counts them; null before the first sample. */
  spanOf(startMs: number, endMs: number): Trim | null {
    const originMs = this.#originMs
    if (originMs === null) return null
    return { startMs: Math.max(0, startMs - originMs), endMs: Math.max(0, endMs - originMs) }
  }

  /** Writes the rest and makes the journal a recording. */
  async finish(recording: Recording): Promise<Result<Recording>> {
    const flushed = await this.flush()
    if (!flushed.ok) return flushed
    return this.#inJournal((journal) => journal.finish(recording))
  }

  /** Forgets everything, in the journal too. What cannot be removed is offered at the next start. */
  async discard(): Promise<void> {
    await this.#queue
    const journal = await this.#journal
    this.#pending = []
    if (!journal.ok) return
    await journal.value.discard().catch((error: unknown) => this.onTrouble(toFailure(error)))
  }

  /** Lets go of the journal as it is: what it has is offered as cut off. */
  async leave(): Promise<void> {
    await this.#queue
    const journal = await this.#journal
    if (journal.ok) journal.value.leave()
  }

  async #write(): Promise<Result<null>> {
    this.#queued = false
    if (this.#pending.length > 0) {
      this.#blocks.push(this.#toBlock(this.#pending))
      this.#pending = []
    }
    const written = await this.#inJournal(async () => ok(null))
    if (!written.ok) this.onTrouble(written)
    return written
  }

  /** Does something with the journal once it has all blocks; in a new one when it is gone. */
  async #inJournal<T>(work: (journal: Journal) => Promise<Result<T>>): Promise<Result<T>> {
    const first = await this.#once(work)
    if (first.ok || !isGone(first)) return first
    await this.#renew()
    return this.#once(work)
  }

  async #once<T>(work: (journal: Journal) => Promise<Result<T>>): Promise<Result<T>> {
    const journal = await this.#openedAtLast()
    if (!journal.ok) return journal
    while (this.#stored < this.#blocks.length) {
      const added = await journal.value.append(this.#blocks[this.#stored]!)
      if (!added.ok) return added
      this.#stored += 1
    }
    return work(journal.value)
  }

  /** What could not be opened, as on a full disk, is tried again with every writing. */
  async #openedAtLast(): Promise<Result<Journal>> {
    const journal = await this.#journal
    if (journal.ok) return journal
    this.#journal = this.store.openJournal(this.recording)
    return this.#journal
  }

  /** Lets go of a journal whose database was deleted; the next one is opened in its place. */
  async #renew(): Promise<void> {
    const before = await this.#journal
    if (before.ok) await before.value.discard().catch(() => undefined)
    this.#stored = 0
    this.#journal = this.store.openJournal(this.recording)
  }

  #toBlock(samples: readonly MotionSample[]): SampleBlock {
    return toBlock(samples, this.#originMs ?? 0)
  }
}

/** The journal, or the library it belongs to, is not in the database any more. */
function isGone({ code }: Failure): boolean {
  return code === 'storage/no-journal' || code === 'storage/no-library'
}
