import type { Evaluation, TakeOutcome } from '../model/evaluation'
import { thresholdAt } from './accepted-from'
import { backgroundAt } from './background-score'
import { scoresOf } from './scores'

/**
 * What the evaluation would have measured with another threshold factor, without training again:
 * of all that is learned only the thresholds follow it, so every answer is known from `acceptedFrom`.
 */
export function atFactor(evaluation: Evaluation, factor: number): Evaluation {
  if (factor === evaluation.thresholdFactor) return evaluation
  const outcomes = evaluation.outcomes.map((outcome) => outcomeAt(evaluation, outcome, factor))
  return {
    ...evaluation,
    thresholdFactor: factor,
    outcomes,
    ...scoresOf(evaluation.gestures, outcomes),
    background: evaluation.background && backgroundAt(evaluation.background, factor),
  }
}

/** Whether a movement is answered at the factor. */
export function isAnswered(acceptedFrom: number | null, factor: number): boolean {
  return acceptedFrom !== null && acceptedFrom <= factor
}

function outcomeAt(evaluation: Evaluation, outcome: TakeOutcome, factor: number): TakeOutcome {
  const { event, nearest, acceptedFrom } = outcome
  const answered = isAnswered(acceptedFrom, factor)
  const answer = answered ? nearest : null
  if (event === null || event.gesture === null) return { ...outcome, answer }
  const { distancePerLog } = evaluation.folds[outcome.fold]!
  const scale = { factor: evaluation.thresholdFactor, distancePerLog }
  return {
    ...outcome,
    answer,
    event: {
      ...event,
      kind: answered ? 'gesture' : 'reject',
      reason: answered ? 'none' : acceptedFrom === null ? event.reason : 'far',
      threshold: thresholdAt(event.threshold, scale, factor),
    },
  }
}
