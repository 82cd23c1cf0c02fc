import type { LiveEvent } from '../../protocol/recogniser'
import { durationText } from './numbers'

/**
 * Where the time went between a movement's end and its answer: the wait for the rest, which the
 * segmenter needs on any board, and the way to the screen, which only this phone has.
 * @param latencyMs from the movement's end to the answer
 */
export function latencySentence(answer: LiveEvent & { latencyMs: number }): string {
  const { event, startMs, endMs, decidedMs, latencyMs } = answer
  const length = durationText(endMs - startMs)
  const waitMs = Math.min(Math.max(0, decidedMs - endMs), latencyMs)
  const wayMs = durationText(latencyMs - waitMs)
  if (event.reason === 'long') return `Given up after ${length} without rest; ${wayMs} to get here.`
  return `Answered ${durationText(latencyMs)} after the movement’s end: ${durationText(waitMs)} until the rest was sure, ${wayMs} to get here. The movement took ${length}.`
}
