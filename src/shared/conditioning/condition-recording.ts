import type { AccelSign } from '../model/library'
import type { CountBlock, SampleBlock } from '../model/sample'
import type { Target } from '../model/target'
import { StreamConditioner } from './stream-conditioner'

/**
 * Counts of a whole recording: exactly those that live samples would have given, and those that only
 * become certain at its end. Pauses longer than PAUSE_LIMIT_MS are left out; for times of single
 * counts use StreamConditioner and its timeOfMs.
 */
export function conditionRecording(
  samples: SampleBlock,
  target: Target,
  accelSign: AccelSign,
): CountBlock {
  const conditioner = new StreamConditioner(target, accelSign)
  const body = conditioner.push(samples)
  const tail = conditioner.flush()
  const counts = new Int16Array(body.counts.length + tail.counts.length)
  counts.set(body.counts)
  counts.set(tail.counts, body.counts.length)
  return {
    counts,
    rateHz: body.rateHz,
    clippedCount: body.clippedCount + tail.clippedCount,
  }
}
