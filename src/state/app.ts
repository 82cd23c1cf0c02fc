import type { ReadonlySignal } from '@preact/signals'
import type { OfflineState } from '../offline/updater'
import type { HeldRecording, OfferedTake, QualityWord, RecordPhase } from '../recording/types'
import type { MotionFacts, MotionSource, MotionStatus } from '../sensors/motion-source'
import type { BoardAnswer } from '../shared/firmware/board-answer'
import type { GripTolerance } from '../shared/grip/grip-tolerance'
import type { Evaluation, Holdout, TrainedModel } from '../shared/model/evaluation'
import type { Gesture, Hand, Library, Recording, Trim } from '../shared/model/library'
import type { RecogniserModel } from '../shared/model/recogniser-model'
import type { Replay } from '../shared/model/replay'
import type { Result } from '../shared/model/result'
import type { SampleBlock } from '../shared/model/sample'
import type { LiveEvent, OnProgress, Progress } from '../shared/protocol/recogniser'
import type { NearestWarping } from '../shared/replay/unroll'
import type { ReportData } from '../shared/report/report-data'
import type { StorageFacts, UnfinishedRecording } from '../storage/store'
import type { BackupState } from './backup'
import type { BoardState } from './board'
import type { CollectState } from './collect'
import type { DecideState } from './decide'
import type { LightState } from './light'
import type { ModelsState } from './models'
import type { ReceiveState } from './receive'
import type { SessionsState } from './session'
import type { StageState } from './stage'
import type { TeachState } from './teach'

/** One line at the bottom of the screen; with `undo` it offers the way back. */
export interface Notice {
  id: number
  text: string
  tone: 'plain' | 'trouble'
  undo?: () => Promise<void>
}

export type Job<T> =
  | { state: 'none' }
  | { state: 'running'; progress: Progress; cancel: () => void }
  | { state: 'failed'; message: string }
  /**
   * `stale`: takes or settings have changed since, or, with `byOther`, another version of the app did it.
   * `at`: when it was done, RFC 3339 in UTC.
   */
  | { state: 'done'; value: T; stale: boolean; byOther?: boolean; at?: string }

/** For long work: how far it is, and the way to stop it. */
export interface Steering {
  signal?: AbortSignal
  onProgress?: OnProgress
}

/** A file for the person. */
export interface HandedFile {
  fileName: string
  bytes: Uint8Array
  /** To be called when the person has it. */
  handedOver(): Promise<void>
}

export interface LibraryState {
  libraries: ReadonlySignal<Library[]>
  current: ReadonlySignal<Library | null>
  /** Recordings of the current library, newest first, deleted ones left out. */
  recordings: ReadonlySignal<Recording[]>
  open(id: string): Promise<void>
  create(name: string): Promise<Result<Library>>
  rename(name: string): Promise<Result<null>>
  removeLibrary(id: string): Promise<void>
  /** Generates and stores the demo library, then opens it. Progress shows in `demoJob`. */
  addDemo(): Promise<void>
  demoJob: ReadonlySignal<Job<null>>
  /** Replaces target or training settings of the current library. */
  update(change: Partial<Pick<Library, 'target' | 'training'>>): Promise<void>
  addGesture(name: string): Promise<Result<Gesture>>
  renameGesture(id: string, name: string): Promise<Result<null>>
  removeGesture(id: string): Promise<void>
  relabel(takeId: string, gestureId: string): Promise<void>
  trim(takeId: string, trim: Trim | null): Promise<void>
  updateFacts(id: string, facts: { testerCode?: string; hand?: Hand; note?: string }): Promise<void>
  removeRecordings(ids: string[]): Promise<void>
  samples(recordingId: string): Promise<SampleBlock | null>
  /** The words a take got when it was recorded, found again; empty when it is not there. */
  quality(takeId: string): Promise<QualityWord[]>
  /** Adds plain logs as takes of one gesture, or as background; all or nothing. */
  addLogs(logs: Log[], as: LogLabels): Promise<Result<null>>
  storageFacts: ReadonlySignal<StorageFacts | null>
}

/** A log from outside, already in SI units. */
export interface Log {
  fileName: string
  samples: SampleBlock
  hasGyro: boolean
  /** Printed by the real hardware. */
  fromBoard?: boolean
}

export interface LogLabels {
  /** Null for background. */
  gestureId: string | null
  testerCode: string
  hand: Hand
}

export interface MotionState {
  kind: ReadonlySignal<MotionSource['kind']>
  status: ReadonlySignal<MotionStatus>
  facts: ReadonlySignal<MotionFacts>
  source(): MotionSource
  /** Switches between the phone and the simulated phone. */
  use(kind: MotionSource['kind']): void
  start(): Promise<MotionStatus>
  /** The lay-flat step: a second of rest, screen up; the sign found is kept for this phone. */
  findSign(): Promise<Result<1 | -1>>
}

export type { OfferedTake, QualityWord, RecordPhase }

export interface RecordState {
  phase: ReadonlySignal<RecordPhase>
  testerCode: ReadonlySignal<string>
  hand: ReadonlySignal<Hand>
  setTester(code: string, hand: Hand): void
  elapsedMs: ReadonlySignal<number>
  /** Last seconds of motion for the live trace; newest last. */
  trace: ReadonlySignal<SampleBlock>
  /** Take of the open library just finished or cut, waiting to be kept or dropped. */
  offered: ReadonlySignal<OfferedTake | null>
  /** Takes that wait, the offered one included. */
  waiting: ReadonlySignal<number>
  beginHold(gestureId: string): Promise<Result<null>>
  endHold(): Promise<void>
  /** @param keepGood takes that look good are kept without asking, each with a way back */
  beginHandsFree(gestureId: string, keepGood?: boolean): Promise<Result<null>>
  beginBackground(): Promise<Result<null>>
  stop(): Promise<void>
  keep(): Promise<void>
  drop(): Promise<void>
  /** Recordings of this visit that could not be stored at their end; each is whole in memory. */
  heldBack: ReadonlySignal<readonly HeldRecording[]>
  /** Stays held back, and says why, when it still cannot be stored. */
  keepHeldBack(id: string): Promise<void>
  dropHeldBack(id: string): Promise<void>
  unfinished: ReadonlySignal<UnfinishedRecording[]>
  keepUnfinished(id: string): Promise<void>
  dropUnfinished(id: string): Promise<void>
}

export interface LiveState {
  running: ReadonlySignal<boolean>
  /** Newest first, at most 50. latencyMs: from the movement's end to the answer on this thread. */
  events: ReadonlySignal<(LiveEvent & { latencyMs: number })[]>
  /** Last seconds of motion energy on the target's clock, and the phase now. */
  energy: ReadonlySignal<Uint32Array>
  /** Conditioned samples since live began: index one past the last of `energy`, as in events. */
  sampleCount: ReadonlySignal<number>
  phase: ReadonlySignal<'idle' | 'moving' | 'wait-rest'>
  trouble: ReadonlySignal<string | null>
  start(): Promise<Result<null>>
  stop(): Promise<void>
  /** The hand presses or releases what cuts movements of a model with a button. */
  press(down: boolean): void
}

/** The app's own files: whether it starts without a network, and newer versions. */
export interface UpdateState {
  offline: ReadonlySignal<OfflineState>
  /** A newer version waits, nothing is being recorded or live, and it was not put off. */
  offered: ReadonlySignal<boolean>
  /** Reloads this page with the newer version. */
  apply(): void
  /** Not in this visit. */
  putOff(): void
}

export type { LightState }

export interface App {
  library: LibraryState
  motion: MotionState
  record: RecordState
  live: LiveState
  light: LightState
  /** The board beside the app; its code is loaded when it is first asked for. */
  openBoard(): Promise<BoardState>
  /** Takes sessions over from other phones' screens; loaded when it is first asked for. */
  /** Collecting from testers; its code is loaded when it is first asked for. */
  openCollect(): Promise<CollectState>
  openReceive(): Promise<ReceiveState>
  /** Testers' sessions on this phone; loaded when they are first asked for. */
  openSessions(): Promise<SessionsState>
  /** Design decisions from the takes; loaded when they are first asked for. */
  openDecide(): Promise<DecideState>
  /** The show for a hall; its code is loaded when it is first asked for. */
  openStage(): Promise<StageState>
  /** Models kept of the open library; their code is loaded when they are first asked for. */
  openModels(): Promise<ModelsState>
  /** Teaching on the prop, tried here; its code is loaded when it is first asked for. */
  openTeach(): Promise<TeachState>
  model: ReadonlySignal<Job<TrainedModel>>
  /** Trains when there is no fresh model; joins a training already running. */
  train(): Promise<Result<TrainedModel>>
  evaluation: ReadonlySignal<Job<Evaluation>>
  evaluate(holdout: Holdout): Promise<void>
  grip: ReadonlySignal<Job<GripTolerance>>
  measureGrip(): Promise<void>
  replay(recordingId: string): Promise<Result<Replay>>
  /** How a segment of a replay lies against the nearest template of each gesture. */
  unroll(model: RecogniserModel, query: Int8Array): Promise<Result<(NearestWarping | null)[]>>
  /** Everything a report of the current library says; trains when there is no fresh model. */
  report(): Promise<Result<ReportData>>
  notices: ReadonlySignal<Notice[]>
  /** Acts of this visit that can still be undone, newest first; stay when the line is dismissed. */
  undoable: ReadonlySignal<Notice[]>
  dismiss(noticeId: number): void
  update: UpdateState
  /** False while another tab is the one that stores: this one shows the same and stores nothing. */
  writesHere: ReadonlySignal<boolean>
  /** Makes this tab the one that stores, unless the other one is recording. */
  writeHere(): Promise<void>
  exportLibrary(steering?: Steering): Promise<Result<HandedFile>>
  exportFirmware(): Promise<Result<{ fileName: string; bytes: Uint8Array }>>
  /** Compares the self-test log that a board printed with this library's vectors. */
  compareBoard(text: string): Promise<Result<BoardAnswer>>
  /** Reads a library file and adds it as a new library; nothing is stored on failure. */
  importLibrary(bytes: Uint8Array, steering?: Steering): Promise<Result<Library>>
  /** Recordings of the open library that no exported file holds; generated ones do not count. */
  unsaved: ReadonlySignal<number>
  /** Backup and restore of everything; its code is loaded when it is first asked for. */
  openBackup(): Promise<BackupState>
}
