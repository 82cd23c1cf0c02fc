import type { Rate, TakeOutcome } from '../model/evaluation'
import { wilson } from '../statistics/wilson'

export const CUTS = ['ok', 'split', 'missed', 'long', 'short'] as const

/** How the held-out takes were cut out of the stream: share and count of each way, of all takes. */
export function cutRates(
  outcomes: readonly Pick<TakeOutcome, 'cut'>[],
): Record<TakeOutcome['cut'], Rate> {
  const rate = (wanted: TakeOutcome['cut']) =>
    wilson(outcomes.filter(({ cut }) => cut === wanted).length, outcomes.length)
  return {
    ok: rate('ok'),
    split: rate('split'),
    missed: rate('missed'),
    long: rate('long'),
    short: rate('short'),
  }
}
