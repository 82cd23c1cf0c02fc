import { type Failure, ok, type Result } from '../model/result'
import type { OnProgress } from '../protocol/recogniser'

/** One that works: a thread, most often. Does one part at a time. */
export interface Hand {
  run(part: number, onProgress: OnProgress): Promise<Result<unknown>>
}

export interface DispatchOptions {
  onProgress?: OnProgress | undefined
  /** Whether a failure is of the hand and not of the part, which is then done again. */
  isOfHand?: (failure: Failure) => boolean
}

/** A part that took so many hands down is at fault itself. */
const MOST_TRIES = 3

/**
 * Gives parts 0 to count - 1 to hands in order, each to whoever is free first. After a failure no
 * further part is begun; those under way are waited for, so that the answer is the failure of the
 * first part that failed, as if one hand had done them in turn.
 */
export async function dispatch(
  count: number,
  hands: readonly Hand[],
  { onProgress, isOfHand = () => false }: DispatchOptions = {},
): Promise<Result<unknown[]>> {
  const values: unknown[] = new Array(count)
  const failures: { part: number; failure: Failure }[] = []
  const tries = new Uint8Array(count)
  const tell = summed(count, onProgress)
  const waiting = Array.from({ length: count }, (_, part) => part)

  const work = async (hand: Hand): Promise<void> => {
    while (failures.length === 0) {
      const part = waiting.shift()
      if (part === undefined) return
      const result = await hand.run(part, (progress) => {
        tell(part, progress.done / Math.max(1, progress.total), progress.what)
      })
      tries[part]!++
      if (result.ok) {
        values[part] = result.value
        tell(part, 1)
      } else if (isOfHand(result) && tries[part]! < MOST_TRIES) {
        waiting.unshift(part)
      } else {
        failures.push({ part, failure: result })
      }
    }
  }

  await Promise.all(hands.map(work))
  const first = failures.sort((a, b) => a.part - b.part)[0]
  return first?.failure ?? ok(values)
}

/** Progress of all parts together; a part that is done again does not take it back. */
function summed(count: number, onProgress: OnProgress = () => {}) {
  const shares = new Float64Array(count)
  let words = ''
  return (part: number, share: number, what?: string) => {
    shares[part] = Math.max(shares[part]!, Math.min(1, share))
    words = what ?? words
    const done = shares.reduce((sum, each) => sum + each, 0)
    onProgress({ done, total: count, what: words })
  }
}
