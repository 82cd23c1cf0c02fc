import type { CoreEvent } from '../core/core'
import type { Cut } from './cut-take'

/** What the segmenter says of a movement. */
export interface Segmented {
  event: Pick<CoreEvent, 'start' | 'end' | 'reason'>
}

/** What became of a take, and the longest segment within its trim, the first of them on a tie. */
export function judgeCut<T extends Segmented>(
  movements: readonly T[],
  trim: { from: number; to: number },
): { cut: Cut; movement: T | null } {
  let movement: T | null = null
  let activations = 0
  for (const one of movements) {
    const middle = (one.event.start + one.event.end) / 2
    if (middle < trim.from || middle > trim.to) continue
    // Short segments are no activations on the board, so they do not make a take split.
    if (one.event.reason !== 'short') activations++
    if (movement === null || spanOf(one) > spanOf(movement)) movement = one
  }
  if (movement === null) return { cut: 'missed', movement }
  const { reason } = movement.event
  if (reason === 'long' || reason === 'short') return { cut: reason, movement }
  return { cut: activations > 1 ? 'split' : 'ok', movement }
}

function spanOf({ event }: Segmented): number {
  return event.end - event.start
}
