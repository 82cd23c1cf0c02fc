import type { BackupContents, LibraryPlace } from '../shared/backup/contents'
import type { BackupItem } from '../shared/backup/kept-items'
import type { PackedLibrary } from '../shared/backup/pack-library'
import type { ReadLibrary } from '../shared/backup/read-backup'
import type { BoardDecision } from '../shared/board/decision/decide'
import type { BoardLog } from '../shared/board/log/board-log'
import type { Incoming } from '../shared/collect/incoming'
import type { TakesCompared } from '../shared/collect/takes-compared'
import type { Vector } from '../shared/firmware/vector'
import type { GripTolerance } from '../shared/grip/grip-tolerance'
import type { Evaluation, Holdout, TrainedModel } from '../shared/model/evaluation'
import type { AccelSign, FullLibrary, Trim } from '../shared/model/library'
import type { RecogniserModel } from '../shared/model/recogniser-model'
import type { Replay } from '../shared/model/replay'
import type { Result } from '../shared/model/result'
import type { SampleBlock } from '../shared/model/sample'
import type { Target } from '../shared/model/target'
import type { RunParts } from '../shared/parts/part-jobs'
import type {
  ButtonChange,
  LiveUpdate,
  OnProgress,
  StoredFile,
} from '../shared/protocol/recogniser'
import type { NearestWarping } from '../shared/replay/unroll'
import type { TeachUpdate } from '../shared/teach/teach-run'

export interface CallOptions {
  /** Aborting ends the worker when the call is running, and drops it when it is queued. */
  signal?: AbortSignal
  onProgress?: OnProgress
  /** Reject with code 'worker/timeout' and restart the worker after this long; 0 never. */
  timeoutMs?: number
}

/**
 * The recogniser's worker as the main thread sees it: one call at a time, in order. Failures are
 * values with codes 'worker/aborted', 'worker/timeout', 'worker/crashed' or those of the service.
 * Live recognition and jobs use workers of their own, so that an aborted job never stops a live
 * session; jobs in parts (evaluation, grip) share a pool over the cores.
 */
export interface RecogniserClient {
  train(full: FullLibrary, options?: CallOptions): Promise<Result<TrainedModel>>
  evaluate(full: FullLibrary, holdout: Holdout, options?: CallOptions): Promise<Result<Evaluation>>
  grip(full: FullLibrary, options?: CallOptions): Promise<Result<GripTolerance>>
  /** A way to run the parts of a job on all workers there are; `timeoutMs` is that of a part. */
  parts(options?: CallOptions): RunParts
  vectors(
    full: FullLibrary,
    trained: TrainedModel,
    options?: CallOptions,
  ): Promise<Result<Vector[]>>
  replay(
    model: RecogniserModel,
    target: Target,
    samples: SampleBlock,
    accelSign: AccelSign,
    trim: Trim | null | 'background',
    options?: CallOptions,
  ): Promise<Result<Replay>>
  unroll(
    model: RecogniserModel,
    query: Int8Array,
    options?: CallOptions,
  ): Promise<Result<(NearestWarping | null)[]>>
  decide(
    model: RecogniserModel,
    target: Target,
    log: BoardLog,
    options?: CallOptions,
  ): Promise<Result<BoardDecision>>
  openLive(
    model: RecogniserModel | null,
    target: Target,
    accelSign: AccelSign,
    options?: CallOptions,
  ): Promise<Result<null>>
  pushLive(
    samples: SampleBlock,
    options?: CallOptions & { buttons?: ButtonChange[] },
  ): Promise<Result<LiveUpdate>>
  closeLive(options?: CallOptions): Promise<Result<null>>
  openTeach(
    model: RecogniserModel,
    target: Target,
    accelSign: AccelSign,
    options?: CallOptions,
  ): Promise<Result<null>>
  beginTeach(gesture: number | null, options?: CallOptions): Promise<Result<null>>
  pushTeach(samples: SampleBlock, options?: CallOptions): Promise<Result<TeachUpdate>>
  writeLibrary(full: FullLibrary, options?: CallOptions): Promise<Result<Uint8Array>>
  readLibrary(bytes: Uint8Array, options?: CallOptions): Promise<Result<FullLibrary>>
  packLibrary(
    full: FullLibrary,
    items: BackupItem[],
    options?: CallOptions,
  ): Promise<Result<PackedLibrary>>
  readBackup(file: StoredFile, options?: CallOptions): Promise<Result<BackupContents>>
  readBackupLibrary(
    file: StoredFile,
    place: LibraryPlace,
    options?: CallOptions,
  ): Promise<Result<ReadLibrary>>
  readIncoming(name: string, bytes: Uint8Array, options?: CallOptions): Promise<Result<Incoming>>
  contentIds(blocks: SampleBlock[], options?: CallOptions): Promise<Result<string[]>>
  compareTakes(full: FullLibrary, options?: CallOptions): Promise<Result<TakesCompared>>
  dispose(): void
}
