import type { Rate } from '../../model/evaluation'
import { countOf, percent, percentRange, plural, UNIT_SPACE } from './numbers'

const ELSEWHERE = 'Expected from elsewhere: of eight hand strokes in a public data set'
const YOURS = 'Your movements may differ: measure them.'

const right = (rate: Rate) =>
  `${percent(rate.value)} (${countOf(rate)}, 95${UNIT_SPACE}% ${percentRange(rate.low, rate.high)})`

/** What so few takes led to elsewhere, for somebody who has not measured yet. */
export const EXPECTATION = {
  fromSeven: (takes: number, rate: Rate) =>
    `${ELSEWHERE}, ${plural('take', takes)} of each by seven people named ${right(rate)} of an eighth. ${YOURS}`,
  fromOne: ({ takes, others, single }: { takes: number; others: Rate; single: Rate }) =>
    `${ELSEWHERE}, one person's takes, ${takes} of each at most, named ${right(others)} of other people; single takes of seven people named ${right(single)}. Other hands tell more than further takes of your own. ${YOURS}`,
}
