import type { EventPair } from '../../board/decision/compare-events'
import type { SameDecision } from '../../board/decision/same-decision'
import type { CoreEvent } from '../../core/core'
import type { RecogniserModel } from '../../model/recogniser-model'
import { wilson } from '../../statistics/wilson'
import { countOf, percent, percentRange, plural } from './numbers'

const OUTCOMES: Record<EventPair['outcome'], string> = {
  same: 'same',
  'other-gesture': 'other gesture',
  'board-rejects': 'board rejects',
  'phone-rejects': 'phone rejects',
  'only-phone': 'board cut nothing',
  'only-board': 'phone cut nothing',
}

export function pairWords({ outcome }: EventPair): string {
  return OUTCOMES[outcome]
}

/** What one side said of a movement. */
export function sideWords(event: CoreEvent | null, model: RecogniserModel | null): string {
  if (event === null) return '–'
  if (event.kind === 'reject') return 'none of these'
  const { gesture } = event
  return gesture === null
    ? 'none of these'
    : (model?.gestures[gesture]?.name ?? `gesture ${gesture + 1}`)
}

/** How many movements both decided alike, and where they part. */
export function decisionWords({ pairs, same, firstDifference }: SameDecision): string {
  if (pairs.length === 0) return 'Neither cut out a movement that could be compared.'
  const rate = wilson(same, pairs.length)
  const share = `${percent(rate.value)} (${countOf(rate)}, 95 % interval ${percentRange(rate.low, rate.high)})`
  if (firstDifference === null) {
    return `Both decided ${plural('movement', pairs.length)} alike: ${share}.`
  }
  const atMs = firstDifference.phone?.atMs ?? firstDifference.board?.atMs ?? 0
  return `Both decided alike in ${share}. They part first at ${(atMs / 1000).toFixed(1)} s: ${pairWords(firstDifference)}.`
}
