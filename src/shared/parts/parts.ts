import type { Core } from '../core/core'
import type { Result } from '../model/result'
import type { OnProgress } from '../protocol/recogniser'

/**
 * A long job that falls into parts which need nothing of each other, such as the rounds of an
 * evaluation. Parts run on any thread in any order, so what a part answers must follow from the
 * shared input and the part alone; both and the answer must be values that can be copied.
 */
export interface PartJob<Shared, Part, Value> {
  /**
   * Once on every thread that helps: does what all parts need, such as conditioning.
   * @param core a recogniser that nobody else uses while the job is open
   */
  open(core: Core, shared: Shared): Result<RunPart<Part, Value>>
}

/** Runs one part. */
export type RunPart<Part, Value> = (
  part: Part,
  onProgress: OnProgress,
) => Result<Value> | Promise<Result<Value>>
