import type { MotionSample } from '../sensors/motion-source'
import type { Recording } from '../shared/model/library'
import { type Failure, ok, type Result } from '../shared/model/result'
import type { SampleBlock } from '../shared/model/sample'
import { joinBlocks } from '../storage/chunk'
import { toFailure } from '../storage/failure'
import type { Journal, Store } from '../storage/store'
import { toBlock } from './block'
import { JOURNAL_EVERY_MS } from './timing'

/**
 * One recording while it runs: samples come in one by one and go to the journal every second. What
 * could not be written stays in memory and is tried again with the next second, so a full disk
 * costs nothing that can still be saved.
 */
export class Capture {
  /** Settles when the journal is there, or could not be opened. */
  readonly opened: Promise<Result<Journal>>
  readonly #written: SampleBlock[] = []
  #writing: MotionSample[] = []
  #pending: MotionSample[]
  /** Time of the first sample on the source's clock; the recording's zero. */
  #originMs: number | null
  #queue: Promise<Result<null>> = Promise.resolve(ok(null))
  #queued = false

  /** @param leadIn samples that came before and belong to the recording; gives the time 0. */
  constructor(
    readonly recording: Recording,
    leadIn: readonly MotionSample[],
    store: Pick<Store, 'openJournal'>,
    readonly onTrouble: (failure: Failure) => void,
  ) {
    this.#pending = [...leadIn]
    this.#originMs = leadIn[0]?.tMs ?? null
    this.opened = store.openJournal(recording)
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
    return joinBlocks([...this.#written, this.#toBlock([...this.#writing, ...this.#pending])])
  }

  /** Writes the rest and makes the journal a recording. */
  async finish(recording: Recording): Promise<Result<Recording>> {
    const [journal, flushed] = await Promise.all([this.opened, this.flush()])
    if (!journal.ok) return journal
    if (!flushed.ok) return flushed
    return journal.value.finish(recording)
  }

  /** Forgets everything, in the journal too. What cannot be removed is offered at the next start. */
  async discard(): Promise<void> {
    const journal = await this.opened
    await this.#queue
    this.#pending = []
    if (!journal.ok) return
    await journal.value.discard().catch((error: unknown) => this.onTrouble(toFailure(error)))
  }

  async #write(): Promise<Result<null>> {
    this.#queued = false
    const journal = await this.opened
    if (!journal.ok) return journal
    if (this.#pending.length === 0) return ok(null)
    this.#writing = this.#pending
    this.#pending = []
    const block = this.#toBlock(this.#writing)
    const written = await journal.value.append(block)
    if (written.ok) this.#written.push(block)
    else {
      this.#pending = [...this.#writing, ...this.#pending]
      this.onTrouble(written)
    }
    this.#writing = []
    return written
  }

  #toBlock(samples: readonly MotionSample[]): SampleBlock {
    return toBlock(samples, this.#originMs ?? 0)
  }
}
