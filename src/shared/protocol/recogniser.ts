import type { BackupContents, LibraryPlace } from '../backup/contents'
import type { BackupItem } from '../backup/kept-items'
import type { PackedLibrary } from '../backup/pack-library'
import type { ReadLibrary } from '../backup/read-backup'
import type { BoardDecision } from '../board/decision/decide'
import type { BoardLog } from '../board/log/board-log'
import type { Incoming } from '../collect/incoming'
import type { TakesCompared } from '../collect/takes-compared'
import type { CoreEvent, CorePhase } from '../core/core'
import type { Vector } from '../firmware/vector'
import type { TrainedModel } from '../model/evaluation'
import type { AccelSign, FullLibrary, Trim } from '../model/library'
import type { RecogniserModel } from '../model/recogniser-model'
import type { Replay } from '../model/replay'
import type { Result } from '../model/result'
import type { SampleBlock } from '../model/sample'
import type { Target } from '../model/target'
import type { PartJobName } from '../parts/part-jobs'
import type { NearestWarping } from '../replay/unroll'
import type { TeachUpdate } from '../teach/teach-run'

/** Progress of a long job: done of total steps, and what is being done, for people. */
export interface Progress {
  done: number
  total: number
  what: string
}

/** Code of runPart's refusal. */
export const NOT_OPEN = 'parts/not-open'

/** A file on the device, such as a Blob: it is read in parts. */
export interface StoredFile {
  readonly size: number
  slice(start: number, end: number): { arrayBuffer(): Promise<ArrayBuffer> }
}

export type OnProgress = (progress: Progress) => void

/** The button went down or up; models that are not cut by a button pass over it. */
export interface ButtonChange {
  /** On the clock of the samples given to pushLive, ms; counts from the next sample on. */
  tMs: number
  down: boolean
}

export interface LiveUpdate {
  /** Events since the last call, with indices in conditioned samples since openLive. */
  events: LiveEvent[]
  /** Conditioned samples since the last call: energy and phase for the view. */
  energy: Uint32Array
  phase: CorePhase
}

export interface LiveEvent {
  event: CoreEvent
  /** Distance to each gesture's nearest template; null where not compared. */
  gestureDistances: number[] | null
  /**
   * First and last sample of the segment on the clock of the samples given to pushLive, ms. The last
   * is the last one whose energy reached the off threshold: the movement's end in every latency.
   */
  startMs: number
  endMs: number
  /** Time of the sample that brought the decision, same clock. */
  decidedMs: number
}

/** Methods of the recogniser's worker. Every one answers with a Result; a rejection is a bug. */
export interface RecogniserService {
  train(full: FullLibrary, onProgress: OnProgress): Promise<Result<TrainedModel>>
  /**
   * Makes ready for parts of a job (`src/shared/parts`) until closeParts.
   * @param key names the job among those that this worker has open
   */
  openParts(key: number, name: PartJobName, shared: unknown): Promise<Result<null>>
  /** One part; NOT_OPEN when this worker, which may be a new one, has not opened the job. */
  runPart(key: number, part: unknown, onProgress: OnProgress): Promise<Result<unknown>>
  closeParts(key: number): Promise<Result<null>>
  /** Vectors for the firmware bundle: inputs with the event logs of this core. */
  vectors(full: FullLibrary, trained: TrainedModel): Promise<Result<Vector[]>>
  replay(
    model: RecogniserModel,
    target: Target,
    samples: SampleBlock,
    accelSign: AccelSign,
    trim: Trim | null | 'background',
  ): Promise<Result<Replay>>
  /** How a compared segment lies against the nearest template of each gesture. */
  unroll(model: RecogniserModel, query: Int8Array): Promise<Result<(NearestWarping | null)[]>>
  /** A board's own samples through the model, as the board does it. */
  decide(model: RecogniserModel, target: Target, log: BoardLog): Promise<Result<BoardDecision>>
  /**
   * Starts live recognition. With `model` null only the segmenter runs, with the target's default
   * parameters, for hands-free recording; every cut
   * movement then comes as an event of kind 'reject' with reason 'far', 'short' or 'long'.
   */
  openLive(
    model: RecogniserModel | null,
    target: Target,
    accelSign: AccelSign,
  ): Promise<Result<null>>
  /** @param buttons changes since the last call, in order */
  pushLive(samples: SampleBlock, buttons?: ButtonChange[]): Promise<Result<LiveUpdate>>
  closeLive(): Promise<Result<null>>
  /** Starts teaching over live samples; 'teach/model' for a model with kernel features. */
  openTeach(model: RecogniserModel, target: Target, accelSign: AccelSign): Promise<Result<null>>
  /** A session: index of the gesture whose place is taken, null for one more. */
  beginTeach(gesture: number | null): Promise<Result<null>>
  pushTeach(samples: SampleBlock): Promise<Result<TeachUpdate>>
  /** The bytes of a library file; 'library/unsound' when the library breaks its own rules. */
  writeLibrary(full: FullLibrary, onProgress: OnProgress): Promise<Result<Uint8Array>>
  /** A library file that anybody may have made; failures are those of `readLibraryFile`. */
  readLibrary(bytes: Uint8Array, onProgress: OnProgress): Promise<Result<FullLibrary>>
  /** One library's parts of a backup; 'library/unsound' as with writeLibrary. */
  packLibrary(
    full: FullLibrary,
    items: BackupItem[],
    onProgress: OnProgress,
  ): Promise<Result<PackedLibrary>>
  /** What a session file or library file brings; failures are those of reading either. */
  readIncoming(name: string, bytes: Uint8Array): Promise<Result<Incoming>>
  /** Content ids of samples, in their order. */
  contentIds(blocks: SampleBlock[]): Promise<Result<string[]>>
  /** Every take beside the others of its gesture, by the recogniser's own distance. */
  compareTakes(full: FullLibrary, onProgress: OnProgress): Promise<Result<TakesCompared>>
  /** What a backup or library file holds, whole or damaged; failures are those of `readContents`. */
  readBackup(file: StoredFile, onProgress: OnProgress): Promise<Result<BackupContents>>
  /** One library of it with its samples: everything that is whole. */
  readBackupLibrary(
    file: StoredFile,
    place: LibraryPlace,
    onProgress: OnProgress,
  ): Promise<Result<ReadLibrary>>
}
