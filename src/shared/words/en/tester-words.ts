import type { TesterSigns } from '../../compare/by-tester'
import type { Holdout } from '../../model/evaluation'

/** Of fewer the counts say nothing that the takes do not. */
const FEWEST_TESTERS = 3

/** What stands beside an interval over takes: 'over takes; testers may differ more'. */
export function overTakesWords(holdout: Holdout): string {
  return holdout === 'tester'
    ? 'over takes; testers may differ more'
    : 'over takes of testers the model knows'
}

/** How many testers got better, worse, neither; '' of few, and where testers were not held out. */
export function testerSignWords(holdout: Holdout, { better, worse, equal }: TesterSigns): string {
  const testers = better + worse + equal
  if (holdout !== 'tester' || testers < FEWEST_TESTERS) return ''
  return `Of ${testers} testers ${better} got better, ${worse} worse, ${equal} equal.`
}
