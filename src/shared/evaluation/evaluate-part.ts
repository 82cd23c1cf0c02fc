import type { Core } from '../core/core'
import type { EvaluationFold, Holdout, TakeOutcome } from '../model/evaluation'
import type { FullLibrary, MatcherWish } from '../model/library'
import { matcherKind, type RecogniserModel } from '../model/recogniser-model'
import { ok, type Result } from '../model/result'
import type { PartJob } from '../parts/parts'
import type { OnProgress } from '../protocol/recogniser'
import { cutTake } from '../training/cut-take'
import { type Prepared, type PreparedTake, prepareLibrary } from '../training/prepare'
import { trainPrepared } from '../training/train-model'
import { acceptedFrom, type ThresholdScale } from './accepted-from'
import { type BackgroundCount, countBackground } from './background-score'
import { type Fold, planFolds } from './folds'

/** What all rounds of an evaluation share. */
export interface EvaluateShared {
  full: FullLibrary
  holdout: Holdout
  /** Of the shuffle when takes are held out. */
  seed: number
  /** How segments are compared; as the library's settings say when missing. */
  matcher?: MatcherWish | undefined
}

/** One round of an evaluation, by its number in the plan. */
export const evaluatePart: PartJob<EvaluateShared, number, Round> = {
  open(core, { full, holdout, seed, matcher }) {
    const plan = planFolds(prepareLibrary(full), holdout, seed)
    if (!plan.ok) return plan
    return ok((index, onProgress) => {
      return runFold(core, plan.value.folds[index]!, index, onProgress, matcher)
    })
  },
}

/** What one round found out. */
export interface Round {
  outcomes: TakeOutcome[]
  background: BackgroundCount
  fold: EvaluationFold
}

function runFold(
  core: Core,
  fold: Fold,
  index: number,
  onProgress: OnProgress,
  matcher?: MatcherWish,
): Result<Round> {
  const what = `holding out ${fold.heldOut}`
  const trained = trainPrepared(core, fold.train, {
    // Testing comes after training's own steps.
    onProgress: ({ done, total }) => onProgress({ done, total: total + 1, what }),
    ...(matcher === undefined ? {} : { matcher }),
  })
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
