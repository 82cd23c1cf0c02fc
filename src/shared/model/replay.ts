import type { CoreEvent } from '../core/core'

/** A recording run through conditioning and core, sample by sample. */
export interface Replay {
  rateHz: number
  /**
   * Samples that came from the recording. Those after it are stillness, added as in training, so
   * that a movement which the recording ends in is decided too.
   */
  recordedCount: number
  /** Conditioned samples in counts, n × 6. */
  counts: Int16Array
  energy: Uint32Array
  phase: Uint8Array
  onThreshold: number
  offThreshold: number
  events: CoreEvent[]
  /** For each event, distance to each gesture (nearest template); null where not compared. */
  gestureDistances: (number[] | null)[]
  /** For each event the segment as it was compared, length × channels; null where it was not. */
  queries: (Int8Array | null)[]
}
