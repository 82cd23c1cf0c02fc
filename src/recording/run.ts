import type { Result } from '../shared/model/result'
import type { RecordPhase } from './types'

/** One stretch of recording, from its beginning to its end. */
export interface Run {
  readonly phase: Exclude<RecordPhase, 'idle' | 'saving'>
  /** Time it counts from on the source's clock, ms. */
  readonly beganMs: number
  begin(): Promise<Result<unknown>>
  /** Saves or offers what was recorded. `atMs`: when the end was asked for. */
  end(atMs: number): Promise<void>
  /** After a begin that failed: lets go of everything. */
  abandon(): Promise<void>
}
