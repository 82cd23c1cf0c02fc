import type { Evaluation, TakeOutcome } from '../model/evaluation'
import { accuracy, countConfusion, precision, recall, rejected } from '../statistics/confusion'

type Scores = Pick<Evaluation, 'confusion' | 'accuracy' | 'rejected' | 'scores'>

/** Counts outcomes: confusion with a reject column, and rates with their Wilson intervals. */
export function scoresOf(
  gestures: readonly { id: string; name: string }[],
  outcomes: readonly TakeOutcome[],
): Scores {
  const confusion = countConfusion(
    outcomes.map((outcome) => outcome.truth),
    outcomes.map((outcome) => outcome.answer),
    gestures.length,
  )
  return {
    confusion,
    accuracy: accuracy(confusion),
    rejected: rejected(confusion),
    scores: gestures.map(({ id, name }, gesture) => ({
      gestureId: id,
      name,
      recall: recall(confusion, gesture),
      precision: precision(confusion, gesture),
    })),
  }
}
