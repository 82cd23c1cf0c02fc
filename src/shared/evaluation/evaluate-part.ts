import type { Core } from '../core/core'
import type { EvaluationFold, Holdout, TakeOutcome, TrainedModel } from '../model/evaluation'
import type { MatcherWish } from '../model/library'
import { matcherKind, type RecogniserModel } from '../model/recogniser-model'
import { ok, type Result } from '../model/result'
import type { PartJob } from '../parts/parts'
import type { OnProgress } from '../protocol/recogniser'
import { cutTake } from '../training/cut-take'
import { KnownDistances } from '../training/known-distances'
import type { Prepared, PreparedTake } from '../training/prepare'
import { seeMovements, trainPrepared } from '../training/train-model'
import { WORK_PROGRESS } from '../words/en/progress-work'
import { acceptedFrom, type ThresholdScale } from './accepted-from'
import { type BackgroundCount, countBackground } from './background-score'
import { type Fold, planFolds } from './folds'

/** What all rounds of an evaluation share. */
export interface EvaluateShared {
  prepared: Prepared
  holdout: Holdout
  /** Of the shuffle when takes are held out. */
  seed: number
  /** Ways to compare segments, each evaluated; undefined as the library's settings say. */
  matchers: readonly (MatcherWish | undefined)[]
}

/** One round of an evaluation, by its number in the plan; an answer for each matcher. */
export const evaluatePart: PartJob<EvaluateShared, number, Round[]> = {
  open(core, { prepared, holdout, seed, matchers }) {
    const plan = planFolds(prepared, holdout, seed)
    if (!plan.ok) return plan
    const distances = new KnownDistances()
    return ok((index, onProgress) => {
      const fold = plan.value.folds[index]!
      return runFold(core, { fold, index, matchers, distances }, onProgress)
    })
  },
}

/** What one round found out with one matcher. */
export interface Round {
  outcomes: TakeOutcome[]
  background: BackgroundCount
  fold: EvaluationFold
}

interface FoldWork {
  fold: Fold
  index: number
  matchers: EvaluateShared['matchers']
  distances: KnownDistances
}

function runFold(
  core: Core,
  { fold, index, matchers, distances }: FoldWork,
  onProgress: OnProgress,
): Result<Round[]> {
  const what = WORK_PROGRESS.holdingOut(fold.heldOut)
  // Where movements start and end is learned once for all matchers.
  const seen = seeMovements(core, fold.train)
  if (!seen.ok) return seen
  const rounds: Round[] = []
  for (const [at, matcher] of matchers.entries()) {
    const trained = trainPrepared(core, fold.train, {
      // Testing comes after training's own steps.
      onProgress: ({ done, total }) => {
        onProgress({ done: at * (total + 1) + done, total: matchers.length * (total + 1), what })
      },
      seen: seen.value,
      distances,
      notes: false,
      ...(matcher === undefined ? {} : { matcher }),
    })
    if (!trained.ok) return trained
    rounds.push(testFold(core, fold, index, trained.value))
  }
  return ok(rounds)
}

function testFold(
  core: Core,
  { heldOut, train, test }: Fold,
  index: number,
  { model, bytes, distancePerLog }: TrainedModel,
): Round {
  const scale = { factor: train.settings.thresholdFactor, distancePerLog }
  core.load(bytes)
  return {
    outcomes: test.takes.map((take) => outcomeOf(core, test, take, { model, scale, fold: index })),
    background: countBackground(core, test.backgrounds, model, scale),
    fold: {
      heldOut,
      trainTakes: train.takes.length,
      testTakes: test.takes.length,
      matcher: matcherKind(model),
      distancePerLog,
    },
  }
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
