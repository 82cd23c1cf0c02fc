import type { DeviceFacts, Hand, RecordingWithSamples } from '../model/library'

/** One tester's sitting that followed a plan: what is known of it besides the recordings. */
export interface Session {
  /** Drawn at random when it began, 32 hex digits. */
  id: string
  planId: string
  /** Of the plan: where the recordings belong, and its name. */
  libraryId: string
  title: string
  /** Given by the app: `newTesterCode`. */
  testerCode: string
  /** Drawn at random with the code, 32 hex digits: tells two testers apart who got one code. */
  testerKey: string
  hand: Hand
  /** When the tester agreed to being recorded; RFC 3339 in UTC, as the others. */
  consentAt: string
  startedAt: string
  endedAt: string
  device: DeviceFacts
  /** Gestures of the plan, by which another library finds its own. */
  gestures: { id: string; name: string }[]
}

/** A session with its takes and background; what goes home in one file. */
export interface SessionFile {
  session: Session
  /** `libraryId`, `testerCode` and `sessionId` are those of the session. */
  recordings: RecordingWithSamples[]
}
