import type { Core } from '../core/core'
import type { Evaluation, Holdout, TakeOutcome } from '../model/evaluation'
import type { FullLibrary } from '../model/library'
import type { RecogniserModel } from '../model/recogniser-model'
import { fail, ok, type Result } from '../model/result'
import type { OnProgress } from '../protocol/recogniser'
import { cutTake } from '../training/cut-take'
import type { MatcherWish } from '../training/kernel/fit-matcher'
import { type Prepared, type PreparedTake, prepareLibrary } from '../training/prepare'
import { trainPrepared } from '../training/train-model'
import {
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
  /** How movements are compared; 'template' by default. */
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
  let background = NO_BACKGROUND
  for (const [index, fold] of folds.entries()) {
    onProgress({ done: index, total: folds.length, what: `holding out ${fold.heldOut}` })
    await options.pause?.()
    if (options.shouldStop?.()) return fail('evaluate/stopped', 'The evaluation was stopped.')
    const round = runFold(core, fold, index, options.matcher ?? 'template')
    if (!round.ok) return round
    outcomes.push(...round.value.outcomes)
    background = round.value.addTo(background)
  }
  onProgress({ done: folds.length, total: folds.length, what: 'counting' })
  const gestures = prepared.gestures.map(({ id, name }) => ({ id, name }))
  return ok({
    holdout,
    gestures,
    testers: [...new Set(prepared.takes.map(({ take }) => take.testerCode))].sort(),
    ...scoresOf(gestures, outcomes),
    outcomes,
    skipped,
    background: scoreBackground(background, prepared.target.rateHz),
    folds: folds.map(({ heldOut, train, test }) => ({
      heldOut,
      trainTakes: train.takes.length,
      testTakes: test.takes.length,
    })),
  })
}

interface Round {
  outcomes: TakeOutcome[]
  addTo: (sum: BackgroundCount) => BackgroundCount
}

function runFold(core: Core, fold: Fold, index: number, matcher: MatcherWish): Result<Round> {
  const trained = trainPrepared(core, fold.train, { matcher })
  if (!trained.ok) return trained
  const { model, bytes } = trained.value
  core.load(bytes)
  const outcomes = fold.test.takes.map((take) => outcomeOf(core, fold.test, take, model, index))
  const counted = countBackground(core, fold.test.backgrounds, model)
  const addTo = (sum: BackgroundCount): BackgroundCount => ({
    samples: sum.samples + counted.samples,
    activations: sum.activations + counted.activations,
    segments: sum.segments + counted.segments,
  })
  return ok({ outcomes, addTo })
}

function outcomeOf(
  core: Core,
  { gestures }: Prepared,
  prepared: PreparedTake,
  model: RecogniserModel,
  fold: number,
): TakeOutcome {
  const { cut, movement } = cutTake(core, prepared, model)
  const event = movement?.event ?? null
  const named = event?.kind === 'gesture' && event.gesture !== null ? event.gesture : null
  const answerId = named === null ? null : model.gestures[named]?.id
  return {
    takeId: prepared.take.id,
    testerCode: prepared.take.testerCode,
    truth: prepared.gesture,
    answer: answerId == null ? null : gestures.findIndex(({ id }) => id === answerId),
    cut,
    event,
    fold,
  }
}
