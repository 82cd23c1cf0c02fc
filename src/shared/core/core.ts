import type { ModelBoard } from '../model/recogniser-model'

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

/** What the segmenter saw, one entry a sample. */
export interface CoreTrace {
  energy: Uint32Array
  phase: Uint8Array
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

/** The C core as TypeScript sees it. One instance holds one recogniser; make more for more. */
export interface Core {
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
  button(pressed: boolean): void
  /** Names one segment that is already cut. gravity: three counts at rest, or null. */
  classify(counts: Int16Array, gravity: Int16Array | null): CoreEvent
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
  /**
   * Counts of kernel features over segments normalised under the loaded model: for each query and
   * feature the count in the first half, in the second, and the longest run (MAX_POOLS numbers).
   * @param records features as `featureRecords` writes them
   */
  kernelCounts(queries: readonly Int8Array[], records: Uint8Array): Uint8Array
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
