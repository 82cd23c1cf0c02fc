import type { QualityWord } from '../../recording/types'

/** What a tester's screen shows, one thing at a time. */
export type SessionPhase =
  /** A tap starts what is asked: it is new, or the tester paused. */
  | { name: 'waiting' }
  /** Hold still: the rest before the movement is part of the take. */
  | { name: 'ready' }
  /** Move now; the take ends by itself when the movement does. */
  | { name: 'go' }
  | { name: 'checking' }
  | { name: 'good' }
  /** Something is wrong with the take: again, or keep it all the same. */
  | { name: 'doubt'; words: QualityWord[] }
  | { name: 'resting' }
  | { name: 'background' }
  | { name: 'paused' }
  /** The sensor gives nothing. */
  | { name: 'no-readings' }
  /** Storing failed; the take is still held in memory. */
  | { name: 'not-stored'; message: string }
  | { name: 'ended' }

/** Time to lift the eyes from a new name, ms; at least the lead-in that a take begins with. */
export const READ_MS = 2600
/** The same when the name is the one before, ms. */
export const READY_MS = 1600
/** How long "good" stands before the next is asked, ms. */
export const GOOD_MS = 900
