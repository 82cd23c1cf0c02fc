import type { ModelBoard, ModelSegmenter } from '../model/recogniser-model'

/** Names of `mvw_reason`, `mvw_roll` and `mvw_phase`, by value. */
export const CORE_REASONS = ['none', 'far', 'ambiguous', 'short', 'long'] as const
export type CoreReason = (typeof CORE_REASONS)[number]
export const CORE_ROLLS = ['off', 'aligned', 'vertical', 'no-rest'] as const
export type CoreRoll = (typeof CORE_ROLLS)[number]
export const CORE_PHASES = ['idle', 'moving', 'wait-rest'] as const
export type CorePhase = (typeof CORE_PHASES)[number]

/** An `mvw_event`. Sample indices count from the last reset; end is one past the last. */
export interface CoreEvent {
  kind: 'gesture' | 'reject'
  reason: CoreReason
  roll: CoreRoll
  /** Index in the model, null when nothing was compared. */
  gesture: number | null
  runnerUp: number | null
  start: number
  end: number
  /** Sum of local costs; null when nothing was compared. */
  distance: number | null
  threshold: number
  runnerUpDistance: number | null
}

/** Names of `mvw_teach_status`, and 'event' where no session is open, by value. */
export const TEACH_STATUSES = {
  1: 'event',
  2: 'more',
  3: 'done',
  [-16]: 'cut',
  [-17]: 'unlike',
  [-18]: 'near',
  [-19]: 'full',
  [-20]: 'model',
} as const
export type TeachStatus = (typeof TEACH_STATUSES)[keyof typeof TEACH_STATUSES]

/** What teaching made of an event: the fields of `mvw_teach` after it. */
export interface TeachAnswer {
  status: TeachStatus
  /** The event with what was taught put in, when no session is open; else as it was. */
  event: CoreEvent
  /** Movements the session has taken. */
  count: number
  /** Nearest other gesture; numbers from the model's gesture count up are taught ones. */
  nearest: number | null
  nearestDistance: number | null
  /** Known after the last movement. */
  spread: number
  threshold: number
}

/** Sizes of `mvw_teach_memory`. */
export interface TeachSizes {
  slots: number
  /** Movements of a session, 2 to 5. */
  takes: number
}

/** What the segmenter saw, one entry a sample. */
export interface CoreTrace {
  energy: Uint32Array
  phase: Uint8Array
}

/** An event with the segment as it was compared, length × channels; of no use when it was not. */
export interface CoreDecision {
  event: CoreEvent
  query: Int8Array
}

/** Recordings behind each other, with the motion energy of each sample as a trace gave it. */
export interface EnergyStreams {
  energy: Uint32Array
  /** n × 6, where gravity is asked for. */
  counts: Int16Array | null
  /** Samples of each recording. */
  lengths: readonly number[]
}

/** What the segmenter takes for one movement, as an event says it; reason 'none' when it is compared. */
export interface CoreCut {
  event: Pick<CoreEvent, 'start' | 'end' | 'reason'>
  /** Accelerometer at rest before it, three counts; null when unknown or not asked for. */
  gravity: Int16Array | null
}

/** Entries of the recogniser's buffers, as in `mvw_memory`. */
export interface CoreMemory {
  ringSamples: number
  queryValues: number
  rowValues: number
}

/** MVW_POOLS: numbers that `Core.kernelCounts` gives for a feature. */
export const MAX_POOLS = 3

export interface DtwOptions {
  channels: number
  band: number
  cost: 0 | 1
  /** Stop when the result must exceed it; none by default. */
  limit?: number
}

/** What rows that are left out together are told by the others. */
export interface LeftOut {
  /** Inverse times targets, rows × columns. */
  dual: Float64Array
  /** What of its targets each row's group misses when it is left out, rows × columns. */
  residuals: Float64Array
}

/** What a matrix is shifted by: all of it, and its diagonal besides. */
export interface Shift {
  add: number
  strength: number
}

/** Numbers of a matrix; counts fit bytes. */
export type Factors = Float64Array | Uint8Array

/** Dense algebra of training; `PLAIN_ALGEBRA` is the same to the bit without a module. */
export interface Algebra {
  /**
   * Products of all pairs of rows, rows × rows, the lower half: of 256 columns in single precision,
   * their sums in double.
   */
  gram(values: Float32Array, rows: number): Float64Array
  /** a × b, both row-major; a has `rows`, b has `columns`. */
  product(a: Factors, rows: number, b: Factors, columns: number): Float64Array
  /**
   * Regression with a symmetric n × n matrix, of which the lower half is read.
   * @param shift added to all of the matrix, and to its diagonal, which must make it positive definite
   * @param targets n × columns
   * @param sizes rows of each group, one after the other; n in all
   * @throws RangeError when it is not positive definite.
   */
  leaveOut(
    matrix: Float64Array,
    shift: Shift,
    targets: Float64Array,
    columns: number,
    sizes: readonly number[],
  ): LeftOut
}

/** The C core as TypeScript sees it. One instance holds one recogniser; make more for more. */
export interface Core extends Algebra {
  /**
   * Loads model bytes and resets.
   * @param board setting of the sensor, checked against the model's; the model's own by default
   * @param memory sizes to say the buffers have, at most what the model needs; that by default
   * @throws CoreError with the core's status.
   */
  load(modelBytes: Uint8Array, board?: ModelBoard, memory?: CoreMemory): void
  reset(): void
  /** Pushes n × 6 counts in order; any split into blocks gives the same events. */
  push(counts: Int16Array, trace?: CoreTrace): CoreEvent[]
  /** push() of a whole recording, with the segment of each event beside it. */
  pushAll(counts: Int16Array, trace?: CoreTrace): CoreDecision[]
  button(pressed: boolean): void
  /** Names one segment that is already cut. gravity: three counts at rest, or null. */
  classify(counts: Int16Array, gravity: Int16Array | null): CoreEvent
  /**
   * What push() cuts out of recordings, each from a reset, without their samples: quick enough to try
   * many thresholds. The trace must come from the same weights, lag and smoothing.
   * @param phases receives the phase after each sample
   * @returns cuts of each recording
   */
  cut(streams: EnergyStreams, segmenter: ModelSegmenter, phases?: Uint8Array): CoreCut[][]
  /** Segments already cut as the loaded model normalises them, length × channels each. */
  normalise(segments: readonly { counts: Int16Array; gravity: Int16Array | null }[]): Int8Array[]
  /** Copy of the last compared segment after normalisation, length × channels. */
  query(): Int8Array
  /** Distance of the last compared segment to one template of the loaded model. */
  templateDistance(templateIndex: number): number
  /** Infinity when no path lies within band and limit. */
  dtw(a: Int8Array, b: Int8Array, options: DtwOptions): number
  /**
   * Distances of each series in `rows` to each in `columns` (all length × channels), row-major.
   */
  dtwMatrix(rows: Int8Array[], columns: Int8Array[], options: DtwOptions): Float64Array
  /** Distances between all series of one length, n × n row-major; warping is symmetric. */
  distances(series: readonly Int8Array[], options: DtwOptions): Float64Array
  /**
   * Counts of kernel features over segments normalised under the loaded model: for each query and
   * feature the count in the first half, in the second, and the longest run (MAX_POOLS numbers).
   * @param records features as `featureRecords` writes them
   */
  kernelCounts(queries: readonly Int8Array[], records: Uint8Array): Uint8Array
  /**
   * Makes the loaded model one that can be taught, until the next load. Slots start empty.
   * @throws CoreError 'teach/model' for a model with kernel features
   */
  openTeaching(sizes: TeachSizes): void
  /**
   * Opens a session, which takes the next movements.
   * @param gesture index of the one whose place is taken, null for one more
   * @returns the gesture's number; @throws CoreError 'teach/full', 'core/argument'
   */
  teach(gesture: number | null): number
  /**
   * Gives teaching the event that push() has just brought (`mvw_teach_event()`). That push must not
   * have gone on to another decision, so push few samples at a time.
   */
  teachEvent(): TeachAnswer
  /** Ends a session without a change. */
  cancelTeaching(): void
  /** @throws CoreError 'core/argument' when the gesture was not taught */
  forget(gesture: number): void
  /** Outputs of one feature at every point of each query, before its bias. */
  kernelOutputs(queries: readonly Int8Array[], record: Uint8Array): Int32Array
}

/** A negative status of the core, with its name in `code` and a sentence in `message`. */
export class CoreError extends Error {
  readonly status: number
  readonly code: string
  constructor(status: number, code: string, message: string) {
    super(message)
    this.name = 'CoreError'
    this.status = status
    this.code = code
  }
}
