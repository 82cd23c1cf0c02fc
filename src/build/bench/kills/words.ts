/** What a browser is doing when it is killed. */
export const JOBS = ['recording', 'labelling', 'merging', 'migrating'] as const
export type JobName = (typeof JOBS)[number]
/** A page that promises before it has written: the counter must see what that costs. */
export type AnyJob = JobName | 'careless'

/** A take as it is promised or found: its samples are told apart by a hash of all their numbers. */
export interface TakeMark {
  id: string
  samples: number
  hash: number
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

/** What a newly started browser finds. */
export interface Found {
  takes: (TakeMark & { label: number })[]
  /** Recordings that were cut off, with the time of the last sample in the journal. */
  unfinished: { id: string; lastMs: number }[]
}
