import type { Signal } from '@preact/signals'
import type { RecogniserClient } from '../../recogniser/client'
import { MovementWatch } from '../../recording/movement-watch'
import { movementHasGap } from '../../recording/quality'
import { Recorder } from '../../recording/recorder'
import type { OfferedTake, QualityWord, RecordSetup } from '../../recording/types'
import type { Library, Recording } from '../../shared/model/library'
import { fail, ok, type Result } from '../../shared/model/result'
import { SESSION_TROUBLE } from '../../shared/words/en/session-trouble'
import type { MotionState } from '../app'
import { newId } from '../id'
import type { Shelf } from '../shelf'
import { judgeCut } from './cut-check'
import { Likeness } from './likeness'

export interface MakerParts {
  shelf: Shelf
  motion: MotionState
  recogniser: RecogniserClient
  deviceLabel: string
  /** Set while a tester is being led: nothing else may ask for attention then. */
  performing: Signal<boolean>
}

/** Makes one recording after the other for a session: begun, ended by the movement, judged, kept. */
export class TakeMaker {
  readonly #parts: MakerParts
  readonly #library: Library
  readonly #likeness: Likeness
  readonly #recorder: Recorder
  readonly #unfollow: () => void
  #offered: OfferedTake | null = null
  #stored: Recording | null = null
  #heldBackId: string | null = null

  /**
   * @param library with the target that takes are judged by
   * @param stored recordings of the session that are stored already
   */
  constructor(parts: MakerParts, library: Library, stored: Recording[]) {
    this.#parts = parts
    this.#library = library
    this.#likeness = new Likeness(
      { store: parts.shelf.store, client: parts.recogniser, library },
      stored.filter((one) => one.kind === 'take'),
    )
    this.#recorder = new Recorder({
      store: parts.shelf.store,
      client: parts.recogniser,
      newId,
      deviceLabel: parts.deviceLabel,
      events: {
        onPhase: () => undefined,
        onOffered: (offered) => {
          this.#offered = offered[0] ?? null
        },
        onStored: (recording) => {
          this.#stored = recording
        },
        onHeldBack: ([held]) => {
          this.#heldBackId = held?.recording.id ?? null
        },
        onIgnored: () => undefined,
        // Told when the take is to be kept: until then it is in memory and tried again.
        onTrouble: () => undefined,
      },
    })
    this.#unfollow = parts.motion.kind.subscribe(() => {
      void this.#recorder.use(parts.motion.source())
    })
  }

  /** A take waits to be kept or dropped. */
  get isOffered(): boolean {
    return this.#offered !== null
  }

  beginTake(setup: RecordSetup, gestureId: string): Promise<Result<null>> {
    return this.#recorder.beginHold(setup, gestureId)
  }

  /** Resolves when the movement is over, or nobody waits for it any more. */
  movementOver(isWanted: () => boolean): Promise<void> {
    const watch = new MovementWatch()
    return new Promise((resolve) => {
      const leave = this.#parts.motion.source().subscribe((sample) => {
        if (isWanted() && watch.add(sample) !== 'over') return
        leave()
        resolve()
      })
    })
  }

  /** Ends the take. @returns what is wrong with it; empty when all is well */
  async endTake(): Promise<QualityWord[]> {
    await this.#recorder.endHold()
    const offer = this.#offered
    if (offer === null) return []
    const { recording, samples } = offer
    const wrong = offer.quality.filter(
      ({ code }) => code !== 'good' && (code !== 'gap' || movementHasGap(samples)),
    )
    // What is wrong already needs no comparison.
    if (wrong.length > 0) return wrong
    const cut = await judgeCut(this.#parts.recogniser, recording, samples, this.#library.target)
    const found = cut ?? (await this.#likeness.judge({ recording, samples }))
    return found === null ? [] : [found]
  }

  /** Stores the offered take; it stays offered when that fails. */
  async keep(): Promise<Result<Recording>> {
    this.#stored = null
    const offer = this.#offered
    const kept = await this.#recorder.keep()
    if (!kept.ok) return kept
    if (offer !== null) this.#likeness.add(offer)
    return this.#justStored()
  }

  /** A kept take was taken back: it is no measure for others. */
  forget(id: string): void {
    this.#likeness.remove(id)
  }

  beginBackground(setup: RecordSetup): Promise<Result<null>> {
    return this.#recorder.beginBackground(setup)
  }

  /** A background that could not be stored at its end waits to be. */
  get isHeldBack(): boolean {
    return this.#heldBackId !== null
  }

  /** Stores the background that waits; it stays where it is when that fails. */
  async keepHeldBack(): Promise<Result<Recording>> {
    this.#stored = null
    const kept = await this.#recorder.keepHeldBack(this.#heldBackId ?? '')
    return kept.ok ? this.#justStored() : kept
  }

  /** Keeps what was recorded of the background, as long as it is. */
  async endBackground(): Promise<Result<Recording>> {
    this.#stored = null
    await this.#recorder.stop()
    return this.#justStored()
  }

  /**
   * Forgets the take under way. A background that waits is stored if that can be by now; if not, what is
   * stored of it is kept when the session is opened again.
   */
  async abandon(): Promise<void> {
    await this.#recorder.stop()
    await this.#recorder.drop()
    if (this.isHeldBack) await this.keepHeldBack()
    await this.#recorder.leaveHeldBack()
  }

  close(): void {
    this.#unfollow()
    void this.abandon()
  }

  #justStored(): Result<Recording> {
    return this.#stored === null
      ? fail('session/not-stored', SESSION_TROUBLE.notStored)
      : ok(this.#stored)
  }
}
