import type { RecogniserClient } from '../recogniser/client'
import type { MotionSample } from '../sensors/motion-source'
import type { AccelSign } from '../shared/model/library'
import type { Failure, Result } from '../shared/model/result'
import type { Target } from '../shared/model/target'
import type { LiveUpdate } from '../shared/protocol/recogniser'
import { toBlock } from './block'

export type LiveClient = Pick<RecogniserClient, 'openLive' | 'pushLive' | 'closeLive'>

/** What the segmenter found, with times on the source's clock, ms. */
export interface CutEvents {
  /** A movement is under way; it began at this time or a little later. */
  onMoving(fromMs: number): void
  onCut(startMs: number, endMs: number): void
  /** The movement under way was no take. */
  onIgnored(reason: 'short' | 'long'): void
  onTrouble(failure: Failure): void
}

/** Samples go to the worker in batches; the answer is late by as much at most. */
const BATCH_MS = 100

/** The core's segmenter running on the live samples: it presses and releases the button. */
export class LiveCutter {
  #pending: MotionSample[] = []
  #busy = false
  #moving = false
  #closed = false

  private constructor(
    readonly client: LiveClient,
    readonly events: CutEvents,
  ) {}

  static async open(
    client: LiveClient,
    target: Target,
    accelSign: AccelSign,
    events: CutEvents,
  ): Promise<Result<LiveCutter>> {
    const opened = await client.openLive(null, target, accelSign)
    return opened.ok ? { ok: true, value: new LiveCutter(client, events) } : opened
  }

  add(sample: MotionSample): void {
    this.#pending.push(sample)
    const isDue = sample.tMs - this.#pending[0]!.tMs >= BATCH_MS
    if (isDue && !this.#busy && !this.#closed) void this.#push()
  }

  async close(): Promise<void> {
    this.#closed = true
    await this.client.closeLive()
  }

  async #push(): Promise<void> {
    this.#busy = true
    const batch = this.#pending
    this.#pending = []
    const pushed = await this.client.pushLive(toBlock(batch, 0))
    this.#busy = false
    if (this.#closed) return
    if (pushed.ok) this.#take(pushed.value, batch[0]!.tMs)
    else {
      this.#closed = true
      this.events.onTrouble(pushed)
    }
  }

  #take(update: LiveUpdate, batchStartMs: number): void {
    for (const { event, startMs, endMs } of update.events) {
      this.#moving = false
      if (event.reason === 'short' || event.reason === 'long') this.events.onIgnored(event.reason)
      else this.events.onCut(startMs, endMs)
    }
    if (update.phase === 'moving' && !this.#moving) {
      this.#moving = true
      this.events.onMoving(batchStartMs)
    }
  }
}
