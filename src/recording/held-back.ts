import type { Recording } from '../shared/model/library'
import { fail, ok, type Result } from '../shared/model/result'
import { RECORDING } from '../shared/words/en/recording'
import type { Capture } from './capture'
import type { HeldRecording, RecorderEvents } from './types'

interface Held extends HeldRecording {
  capture: Capture
}

/**
 * Recordings that could not be stored at their end, as on a full disk. The journal may have a part of each;
 * here each is whole, until it is stored after all or dropped.
 */
export class HeldBack {
  #held: Held[] = []

  constructor(readonly events: RecorderEvents) {}

  add(capture: Capture, recording: Recording): void {
    this.#set([...this.#held, { recording, samples: capture.samples(), capture }])
  }

  /** Stores the one with this id; it stays here when that fails. */
  async keep(id: string): Promise<Result<null>> {
    const held = this.#find(id)
    if (held === undefined) return fail('record/nothing-held', RECORDING.nothingHeldBack)
    const stored = await held.capture.finish(held.recording)
    if (!stored.ok) return stored
    this.#remove(held)
    this.events.onStored(stored.value)
    return ok(null)
  }

  /** Forgets the one with this id, what the journal has of it too. */
  async drop(id: string): Promise<void> {
    const held = this.#find(id)
    if (held === undefined) return
    this.#remove(held)
    await held.capture.discard()
  }

  /** Lets go of all: what the journals have of them is offered as cut off. */
  async leave(): Promise<void> {
    const held = this.#held
    this.#set([])
    for (const { capture } of held) await capture.leave()
  }

  #find(id: string): Held | undefined {
    return this.#held.find(({ recording }) => recording.id === id)
  }

  #remove(held: Held): void {
    this.#set(this.#held.filter((other) => other !== held))
  }

  #set(held: Held[]): void {
    this.#held = held
    this.events.onHeldBack(held.map(({ recording, samples }) => ({ recording, samples })))
  }
}
