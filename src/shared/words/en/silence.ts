import type { CorePhase } from '../../core/core'
import type { ModelSegmenter } from '../../model/recogniser-model'
import type { Replay } from '../../model/replay'
import { groupDigits } from './numbers'

/**
 * Why nothing is being cut out right now, for the live view: the state of the segmenter in one
 * sentence with the figure that decides.
 * @param energy motion energy of the last seconds, newest last
 */
export function segmenterSentence(
  energy: Uint32Array,
  phase: CorePhase,
  segmenter: ModelSegmenter,
): string {
  if (energy.length === 0) return 'No samples yet.'
  if (phase === 'wait-rest') return 'Movement was too long: waiting for rest.'
  if (phase === 'moving') return 'Inside a movement.'
  let peak = 0
  for (const value of energy) peak = Math.max(peak, value)
  if (peak < segmenter.onThreshold) {
    return `Below the start: motion peaked at ${groupDigits(peak)}, a movement starts at ${groupDigits(segmenter.onThreshold)}.`
  }
  const last = energy[energy.length - 1] ?? 0
  if (last >= segmenter.onThreshold) return 'Motion is above the start; not yet long enough.'
  return 'At rest, ready.'
}

/**
 * Why a recording was cut into nothing: the figure that decided. Empty when something was cut.
 */
export function noCutSentence(replay: Replay): string {
  if (replay.events.length > 0) return ''
  if (replay.energy.length === 0) return 'The recording is empty.'
  const peak = replay.energy.reduce((top, value) => Math.max(top, value), 0)
  const start = groupDigits(replay.onThreshold)
  if (peak < replay.onThreshold) {
    return `No movement was cut out: motion peaked at ${groupDigits(peak)}, a movement starts at ${start}.`
  }
  return `No movement was cut out: motion passed ${start} (peak ${groupDigits(peak)}), but not long enough.`
}
