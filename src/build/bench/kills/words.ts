/** What a browser is doing when it is killed. */
export const JOBS = ['recording', 'labelling', 'merging', 'migrating', 'session'] as const
export type JobName = (typeof JOBS)[number]
/** Pages that promise before they have written: the counter must see what that costs. */
export type AnyJob = JobName | 'careless' | 'careless-session'

/** A take as it is promised or found: its samples are told apart by a hash of all their numbers. */
export interface TakeMark {
  id: string
  samples: number
  hash: number
}

/** Where a tester's session stands: what was kept, each with the number of its prompt, from 0. */
export interface SessionMark {
  id: string
  kept: { at: number; recordingId: string }[]
}

/** What the page says while it works; the last word before a kill is what the person was told. */
export type Word =
  | { is: 'ready' | 'working' }
  /** A sample came in for a recording under way; time from the recording's first sample. */
  | { is: 'sample'; id: string; tMs: number }
  /** The person was told that these takes are stored. */
  | { is: 'stored'; takes: TakeMark[] }
  /** These takes are about to be added together: all of them or none. */
  | { is: 'adding'; ids: string[] }
  /** Labels are numbered: a later one that was stored before it could be told is no loss. */
  | { is: 'labelled'; id: string; label: number }
  /** The tester was shown this. */
  | { is: 'stands'; session: SessionMark }
  /** The tester takes this one back: until it is told where the session stands, either will do. */
  | { is: 'undoing'; id: string; recordingId: string }
  /** The tester takes the whole session back: until that is told, all of it is there or nothing. */
  | { is: 'withdrawing' | 'withdrawn'; id: string; recordingIds: string[] }
  /** The session was handed over, and is in its library. */
  | { is: 'home'; id: string }

/** What a newly started browser finds. */
export interface Found {
  takes: (TakeMark & { label: number })[]
  /** Recordings that were cut off, with the time of the last sample in the journal. */
  unfinished: { id: string; lastMs: number }[]
}

/** A session as it goes on after a new start. */
export interface FoundSession extends SessionMark {
  /** Takes that the progress bar counts as kept. */
  shown: number
  /** Kept takes whose gesture or hand is not what their prompt asks. */
  unasked: number
  /** Stored takes of this session, whether it knows of them or not. */
  takes: string[]
  isHome: boolean
}
