import * as v from 'valibot'
import { CORE_REASONS, CORE_ROLLS } from '../core/core'
import type { Evaluation } from '../model/evaluation'
import { countSchema as count, numberOrNone, rateSchema as rate } from './rate-schema'

const indexOrNone = v.nullable(count)

const event = v.object({
  kind: v.picklist(['gesture', 'reject']),
  reason: v.picklist(CORE_REASONS),
  roll: v.picklist(CORE_ROLLS),
  gesture: indexOrNone,
  runnerUp: indexOrNone,
  start: count,
  end: count,
  distance: indexOrNone,
  threshold: count,
  runnerUpDistance: indexOrNone,
})

const outcome = v.object({
  takeId: v.string(),
  testerCode: v.string(),
  truth: count,
  answer: indexOrNone,
  nearest: indexOrNone,
  acceptedFrom: v.nullable(v.number()),
  cut: v.picklist(['ok', 'missed', 'split', 'long', 'short']),
  event: v.nullable(event),
  fold: count,
})

const background = v.object({
  hours: v.number(),
  activations: count,
  perHour: numberOrNone,
  low: numberOrNone,
  high: numberOrNone,
  segments: count,
  acceptedFrom: v.array(v.number()),
})

/** An evaluation as it is kept beside a library, for reading back what was stored. */
export const evaluationSchema = v.pipe(
  v.object({
    holdout: v.picklist(['tester', 'take']),
    thresholdFactor: v.number(),
    gestures: v.array(v.object({ id: v.string(), name: v.string() })),
    testers: v.array(v.string()),
    confusion: v.array(v.array(count)),
    accuracy: rate,
    rejected: rate,
    scores: v.array(
      v.object({ gestureId: v.string(), name: v.string(), recall: rate, precision: rate }),
    ),
    outcomes: v.array(outcome),
    skipped: v.array(v.object({ takeId: v.string(), reason: v.string() })),
    background: v.nullable(background),
    folds: v.array(
      v.object({
        heldOut: v.string(),
        trainTakes: count,
        testTakes: count,
        matcher: v.picklist(['template', 'kernel', 'both']),
        distancePerLog: v.nullable(v.number()),
      }),
    ),
  }),
  v.check(refersToItself),
)

/** Whether a value of unknown origin is an evaluation whose indices point at what is there. */
export function isEvaluation(value: unknown): value is Evaluation {
  return v.is(evaluationSchema, value)
}

function refersToItself({ gestures, confusion, scores, outcomes, folds }: Evaluation): boolean {
  const known = (index: number | null) => index === null || index < gestures.length
  return (
    confusion.length === gestures.length &&
    scores.length === gestures.length &&
    confusion.every((row) => row.length === gestures.length + 1) &&
    outcomes.every(
      ({ truth, answer, nearest, fold }) =>
        known(truth) && known(answer) && known(nearest) && fold < folds.length,
    )
  )
}
