import type { Hand, Recording, Take } from '../shared/model/library'
import type { Failure } from '../shared/model/result'
import type { SampleBlock } from '../shared/model/sample'
import type { Target } from '../shared/model/target'

/** What a take looks like right after it was recorded. */
export interface QualityWord {
  code:
    | 'too-short'
    | 'nothing-moved'
    | 'clipped'
    | 'gap'
    | 'no-gyro'
    | 'cut-in-two'
    | 'unlike'
    | 'good'
  /** For people, with figures and unit. */
  text: string
}

/** A take that waits to be kept or dropped. It is in the journal, so a crash does not lose it. */
export interface OfferedTake {
  recording: Take
  samples: SampleBlock
  /** At least one word; 'good' only by itself. */
  quality: QualityWord[]
}

/** A recording that could not be stored at its end. It is whole in memory, and perhaps partly stored. */
export interface HeldRecording {
  recording: Recording
  samples: SampleBlock
}

export type RecordPhase = 'idle' | 'holding' | 'hands-free' | 'background' | 'saving'

/** Whose movements are recorded for what. */
export interface RecordSetup {
  libraryId: string
  testerCode: string
  hand: Hand
  /** Hardware that clipping is judged by and that the live segmenter is set up for. */
  target: Target
  /**
   * The hand holds a button as it will on the board: a held take is trimmed to the press. Without it a
   * held take counts as a whole.
   */
  trimToPress?: boolean
  /** Tester's session that the recording belongs to. */
  sessionId?: string
}

/** Called as things happen; all on the main thread, never within a call of the recorder. */
export interface RecorderEvents {
  onPhase(phase: RecordPhase): void
  /** Takes that wait, oldest first. */
  onOffered(offered: readonly OfferedTake[]): void
  onStored(recording: Recording): void
  /** Recordings that could not be stored at their end and wait for room, oldest first. */
  onHeldBack(held: readonly HeldRecording[]): void
  /** Hands-free: a movement was cut but is no take; one sentence. */
  onIgnored(message: string): void
  /** Writing or recognising failed; what was recorded is still held in memory. */
  onTrouble(failure: Failure): void
}
