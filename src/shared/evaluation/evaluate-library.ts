import type { Core } from '../core/core'
import type { Evaluation, EvaluationFold, Holdout, TakeOutcome } from '../model/evaluation'
import type { FullLibrary, MatcherWish } from '../model/library'
import { matcherKind, type RecogniserModel } from '../model/recogniser-model'
import { fail, ok, type Result } from '../model/result'
import type { OnProgress } from '../protocol/recogniser'
import { cutTake } from '../training/cut-take'
import { type Prepared, type PreparedTake, prepareLibrary } from '../training/prepare'
import { trainPrepared } from '../training/train-model'
import { acceptedFrom, type ThresholdScale } from './accepted-from'
import {
  addBackground,
  type BackgroundCount,
  countBackground,
  NO_BACKGROUND,
  scoreBackground,
} from './background-score'
import { type Fold, planFolds } from './folds'
import { scoresOf } from './scores'

export interface EvaluateOptions {
  /** Of the shuffle when takes are held out; the same seed gives the same folds. */
  seed?: number
  /** Asked between steps; true ends the evaluation with code 'evaluate/stopped'. */
  shouldStop?: () => boolean
  /** How segments are compared; as the library's settings say by default. */
  matcher?: MatcherWish
  /** Awaited between steps; give one that lets the thread do other work, such as a timer. */
  pause?: () => Promise<void>
}

/**
 * How well the library's gestures are recognised by a model that has not met what it is asked.
 * Everything learned (segmentation, floors, normalisation, templates, thresholds) is learned again
 * in every round; each held-out take then runs through the whole stream, cutting included, and the
 * longest segment within its trim is the answer.
 * Codes: those of planFolds and trainPrepared, 'evaluate/stopped'.
 */
export async function evaluateLibrary(
  core: Core,
  full: FullLibrary,
  holdout: Holdout,
  onProgress: OnProgress = () => {},
  options: EvaluateOptions = {},
): Promise<Result<Evaluation>> {
  onProgress({ done: 0, total: 1, what: 'conditioning the recordings' })
  const prepared = prepareLibrary(full)
  const plan = planFolds(prepared, holdout, options.seed ?? 1)
  if (!plan.ok) return plan
  const { folds, skipped } = plan.value
  const outcomes: TakeOutcome[] = []
  const rounds: EvaluationFold[] = []
  let background = NO_BACKGROUND
  for (const [index, fold] of folds.entries()) {
    onProgress({ done: index, total: folds.length, what: `holding out ${fold.heldOut}` })
    await options.pause?.()
    if (options.shouldStop?.()) return fail('evaluate/stopped', 'The evaluation was stopped.')
    const round = runFold(core, fold, index, options.matcher)
    if (!round.ok) return round
    outcomes.push(...round.value.outcomes)
    background = addBackground(background, round.value.background)
    rounds.push(round.value.fold)
  }
  onProgress({ done: folds.length, total: folds.length, what: 'counting' })
  const gestures = prepared.gestures.map(({ id, name }) => ({ id, name }))
  return ok({
    holdout,
    thresholdFactor: prepared.settings.thresholdFactor,
    gestures,
    testers: [...new Set(prepared.takes.map(({ take }) => take.testerCode))].sort(),
    ...scoresOf(gestures, outcomes),
    outcomes,
    skipped,
    background: scoreBackground(background, prepared.target.rateHz),
    folds: rounds,
  })
}

interface Round {
  outcomes: TakeOutcome[]
  background: BackgroundCount
  fold: EvaluationFold
}

function runFold(core: Core, fold: Fold, index: number, matcher?: MatcherWish): Result<Round> {
  const trained = trainPrepared(core, fold.train, matcher === undefined ? {} : { matcher })
  if (!trained.ok) return trained
  const { model, bytes, distancePerLog } = trained.value
  const scale = { factor: fold.train.settings.thresholdFactor, distancePerLog }
  core.load(bytes)
  const { heldOut, train, test } = fold
  return ok({
    outcomes: test.takes.map((take) => outcomeOf(core, test, take, { model, scale, fold: index })),
    background: countBackground(core, test.backgrounds, model, scale),
    fold: {
      heldOut,
      trainTakes: train.takes.length,
      testTakes: test.takes.length,
      matcher: matcherKind(model),
      distancePerLog,
    },
  })
}

interface Judge {
  model: RecogniserModel
  scale: ThresholdScale
  fold: number
}

function outcomeOf(
  core: Core,
  { gestures }: Prepared,
  prepared: PreparedTake,
  { model, scale, fold }: Judge,
): TakeOutcome {
  const { cut, movement } = cutTake(core, prepared, model)
  const event = movement?.event ?? null
  const nearestId = event?.gesture == null ? null : model.gestures[event.gesture]?.id
  const nearest = nearestId == null ? null : gestures.findIndex(({ id }) => id === nearestId)
  return {
    takeId: prepared.take.id,
    testerCode: prepared.take.testerCode,
    truth: prepared.gesture,
    answer: event?.kind === 'gesture' ? nearest : null,
    nearest,
    acceptedFrom: event === null ? null : acceptedFrom(event, model, scale),
    cut,
    event,
    fold,
  }
}
