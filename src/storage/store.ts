import type { Inventory } from '../shared/backup/plan-restore'
import type { Marks } from '../shared/collect/marks'
import type {
  Background,
  FullLibrary,
  Library,
  Recording,
  RecordingWithSamples,
  Take,
} from '../shared/model/library'
import type { Result } from '../shared/model/result'
import type { SampleBlock } from '../shared/model/sample'
import type { LibraryFacts } from './contents'
import type { PenAnswer } from './pen'
import type { ItemKind } from './schema'

/** A recording that was interrupted, as the journal kept it. */
export interface UnfinishedRecording {
  recording: Recording
  samples: SampleBlock
}

export interface StorageFacts {
  usedBytes: number
  quotaBytes: number
  /** Whether the browser promised not to evict; null when it cannot say. */
  persisted: boolean | null
  /** Damaged items met since storage was opened; left out of every answer, not deleted. */
  unreadableItems: number
}

/** A journal of one recording in progress; at most about one second is ever unwritten. */
export interface Journal {
  /** Adds samples behind those given before; written by the time the promise settles. */
  append(block: SampleBlock): Promise<Result<null>>
  /** Makes it a recording, in one transaction; the journal is gone then. */
  finish(recording: Recording): Promise<Result<Recording>>
  discard(): Promise<void>
  /** Lets go of it as it is, as a kill would: from now on it is unfinished, here too. */
  leave(): void
}

/** A value kept beside a library and removed with it. What is in it only its owner knows. */
export interface KeptItem {
  id: string
  libraryId: string
  /** RFC 3339 in UTC. */
  keptAt: string
  /** Plain data; whoever reads it checks it against a schema first. */
  value: unknown
}

/** A library after a change, and what changes with it. */
export interface LibraryChange {
  library: Library
  add: RecordingWithSamples[]
  /** Facts only, as with `updateRecording`. */
  update: Recording[]
  /** Ids to delete softly, and to restore. */
  remove: string[]
  restore: string[]
}

/** Everything stored. The only owner of IndexedDB; all writes are transactions, durability strict. */
export interface Store {
  listLibraries(): Promise<Library[]>
  /** Those that `restoreLibrary` can still bring back. */
  listDeletedLibraries(): Promise<Library[]>
  putLibrary(library: Library): Promise<Result<null>>
  /** Soft delete, undone by restoreLibrary until purgeDeleted. */
  deleteLibrary(id: string): Promise<Result<null>>
  restoreLibrary(id: string): Promise<Result<null>>

  /** Facts only, without samples; deleted ones left out. */
  listRecordings(libraryId: string): Promise<Recording[]>
  /** Samples of one recording; null when it is not there. */
  loadSamples(recordingId: string): Promise<SampleBlock | null>
  loadFull(libraryId: string): Promise<FullLibrary | null>
  /** A library and facts of its recordings as they are at one moment; null when it is not there. */
  loadFacts(libraryId: string): Promise<LibraryFacts | null>
  /** Changes facts (relabel, trim, note, tester, hand); samples cannot be changed. */
  updateRecording(recording: Take | Background): Promise<Result<null>>
  /** Adds content ids, by recording, to those that have none; whatever was edited since stays. */
  noteContents(ids: ReadonlyMap<string, string>): Promise<Result<null>>
  deleteRecordings(ids: string[]): Promise<Result<null>>
  restoreRecordings(ids: string[]): Promise<Result<null>>
  /** All or nothing: a library with its recordings, as from an import or the demo. */
  addFullLibrary(full: FullLibrary): Promise<Result<null>>
  /** All or nothing, in one transaction. */
  changeLibrary(change: LibraryChange): Promise<Result<null>>
  /**
   * The same for a change planned on what is stored in that very moment; nothing is changed when `plan`
   * fails. It is quick and may be asked twice. Gives what was changed.
   */
  planChange(
    libraryId: string,
    plan: (facts: LibraryFacts) => Result<LibraryChange>,
  ): Promise<Result<LibraryChange>>
  /** All or nothing, to an existing library. */
  addRecordings(items: RecordingWithSamples[]): Promise<Result<null>>
  /** Ids of all that is stored, what is deleted and can still be undone included. */
  inventory(): Promise<Inventory>
  /** Removes for good what was deleted before `before` (RFC 3339); marks of what was withdrawn stay. */
  purgeDeleted(before: string): Promise<void>
  /** What is left of withdrawals whose library was removed for good. */
  marks(): Promise<Marks>

  openJournal(recording: Recording): Promise<Result<Journal>>
  /** Journals left behind by a kill, to be finished or discarded. */
  unfinished(): Promise<UnfinishedRecording[]>
  finishUnfinished(recordingId: string, recording: Recording): Promise<Result<Recording>>
  discardUnfinished(recordingId: string): Promise<void>

  /** Of one library, oldest first. */
  listItems(kind: ItemKind, libraryId: string): Promise<KeptItem[]>
  /** Adds or replaces. */
  putItem(kind: ItemKind, item: KeptItem): Promise<Result<null>>
  /** For good; ids that are not there are passed over. */
  removeItems(kind: ItemKind, ids: string[]): Promise<Result<null>>

  facts(): Promise<StorageFacts>
  /** Asks the browser to keep the data; call after the first own take is stored. */
  requestPersistence(): Promise<boolean | null>
  /** Asks the tab that writes to let this one do it; 'busy' while something is recorded there. */
  takePen(): Promise<PenAnswer>
  close(): void
}
