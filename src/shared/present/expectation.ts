import type { Rate } from '../model/evaluation'
import { wilson } from '../statistics/wilson'
import { EXPECTATION } from '../words/en/expectation'
import type { LibraryCounts } from './library-counts'

interface Known {
  /** Takes of a gesture by each person, at most. */
  takes: number
  rate: Rate
}

// Eight hand strokes of UTD-MHAD, eight subjects, a new subject named by the exported model: figures
// `onetester_N_accuracy` and `fewshot_N_accuracy` of `npm run bench -- accuracy`.
const FROM_ONE: readonly Known[] = [
  { takes: 1, rate: wilson(1395, 1785) },
  { takes: 3, rate: wilson(1420, 1785) },
  { takes: 5, rate: wilson(1415, 1785) },
]
const FROM_SEVEN: readonly Known[] = [
  { takes: 1, rate: wilson(245, 255) },
  { takes: 3, rate: wilson(251, 255) },
  { takes: 5, rate: wilson(252, 255) },
]

/**
 * What so few takes led to elsewhere, for somebody who has not measured yet; null when there are no
 * takes, or enough that only measuring says more.
 */
export function expectationSentence({ gestures, testers }: LibraryCounts): string | null {
  const performed = gestures.filter(({ takes }) => takes.length > 0)
  if (performed.length < 2 || testers.length === 0) return null
  const most = Math.max(...performed.map(({ takes }) => takes.length / testers.length))
  if (testers.length === 1) return fromOne(most)
  const known = FROM_SEVEN.find(({ takes }) => most <= takes)
  if (known === undefined) return null
  return EXPECTATION.fromSeven(known.takes, known.rate)
}

function fromOne(most: number): string {
  const known = FROM_ONE.find(({ takes }) => most <= takes) ?? FROM_ONE[2]!
  const single = FROM_SEVEN[0]!
  return EXPECTATION.fromOne({ takes: known.takes, others: known.rate, single: single.rate })
}
