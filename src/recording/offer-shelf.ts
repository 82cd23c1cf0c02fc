import type { MotionFacts } from '../sensors/motion-source'
import type { Take, Trim } from '../shared/model/library'
import { fail, ok, type Result } from '../shared/model/result'
import type { Target } from '../shared/model/target'
import { RECORDING } from '../shared/words/en/recording'
import type { Capture } from './capture'
import { completed } from './facts'
import { judgeTake } from './quality'
import type { OfferedTake, RecorderEvents } from './types'

interface Offer {
  take: OfferedTake
  capture: Capture
}

/** Takes that wait to be kept or dropped, oldest first. */
export class OfferShelf {
  #offers: Offer[] = []

  constructor(readonly events: RecorderEvents) {}

  /** Puts a finished take on the shelf, all of it in the journal. */
  async offer(
    capture: Capture,
    target: Target,
    facts: MotionFacts,
    trim: Trim | null = null,
  ): Promise<void> {
    await capture.flush()
    const samples = capture.samples()
    const recording = completed({ ...(capture.recording as Take), trim }, samples, facts)
    const quality = judgeTake(samples, recording.device, target)
    this.#set([...this.#offers, { take: { recording, samples, quality }, capture }])
  }

  /** Stores the one with this id, or the oldest; it stays on the shelf when that fails. */
  async keep(id?: string): Promise<Result<null>> {
    const offer = this.#find(id)
    if (offer === undefined) return fail('record/nothing-offered', RECORDING.nothingOffered)
    const stored = await offer.capture.finish(offer.take.recording)
    if (!stored.ok) return stored
    this.#remove(offer)
    this.events.onStored(stored.value)
    return ok(null)
  }

  /** Forgets the one with this id, or the oldest. */
  async drop(id?: string): Promise<void> {
    const offer = this.#find(id)
    if (offer === undefined) return
    this.#remove(offer)
    await offer.capture.discard()
  }

  #find(id: string | undefined): Offer | undefined {
    return this.#offers.find(({ take }) => id === undefined || take.recording.id === id)
  }

  #remove(offer: Offer): void {
    this.#set(this.#offers.filter((other) => other !== offer))
  }

  #set(offers: Offer[]): void {
    this.#offers = offers
    this.events.onOffered(offers.map(({ take }) => take))
  }
}
