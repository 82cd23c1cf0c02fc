import type { Core } from '../core/core'
import type { Evaluation, Holdout } from '../model/evaluation'
import type { FullLibrary, MatcherWish } from '../model/library'
import { ok, type Result } from '../model/result'
import type { RunParts } from '../parts/part-jobs'
import { partsHere } from '../parts/parts-here'
import type { OnProgress } from '../protocol/recogniser'
import { type Prepared, prepareLibrary } from '../training/prepare'
import { ConditionedCache, prepareInParts } from '../training/prepare-in-parts'
import { WORK_PROGRESS } from '../words/en/progress-work'
import { addBackground, NO_BACKGROUND, scoreBackground } from './background-score'
import type { Round } from './evaluate-part'
import { type FoldPlan, planFolds } from './folds'
import { scoresOf } from './scores'

export { ConditionedCache }

export interface EvaluateOptions {
  /** Of the shuffle when takes are held out; the same seed gives the same folds. */
  seed?: number
  /** How segments are compared; as the library's settings say by default. */
  matcher?: MatcherWish
}

export interface EvaluateHereOptions extends EvaluateOptions {
  /** Asked between rounds; true ends the evaluation with code 'parts/stopped'. */
  shouldStop?: () => boolean
  /** Awaited between rounds; give one that lets the thread do other work, such as a timer. */
  pause?: () => Promise<void>
}

export interface EvaluateInPartsOptions extends EvaluateOptions {
  /** Of recordings conditioned before. */
  cache?: ConditionedCache
}

const CONDITIONING = { done: 0, total: 1, what: WORK_PROGRESS.conditioning }

/** `evaluateInParts` on this thread. */
export async function evaluateLibrary(
  core: Core,
  full: FullLibrary,
  holdout: Holdout,
  onProgress: OnProgress = () => {},
  { shouldStop, pause, matcher, seed }: EvaluateHereOptions = {},
): Promise<Result<Evaluation>> {
  onProgress(CONDITIONING)
  const run = partsHere(core, { shouldStop, pause })
  const job = { prepared: prepareLibrary(full), holdout, matchers: [matcher], seed }
  return firstOf(await evaluateMatchers(run, job, onProgress))
}

/**
 * How well the library's gestures are recognised by a model that has not met what it is asked.
 * Everything learned (segmentation, floors, normalisation, templates, thresholds) is learned again
 * in every round; each held-out take then runs through the whole stream, cutting included, and the
 * longest segment within its trim is the answer. Rounds need nothing of each other, so they are parts.
 * Codes: those of planFolds, trainPrepared and of whoever runs the parts.
 */
export async function evaluateInParts(
  run: RunParts,
  full: FullLibrary,
  holdout: Holdout,
  onProgress: OnProgress = () => {},
  { matcher, seed, cache }: EvaluateInPartsOptions = {},
): Promise<Result<Evaluation>> {
  onProgress(CONDITIONING)
  const prepared = await prepareInParts(run, full, cache)
  if (!prepared.ok) return prepared
  const job = { prepared: prepared.value, holdout, matchers: [matcher], seed }
  return firstOf(await evaluateMatchers(run, job, onProgress))
}

export interface EvaluateJob {
  prepared: Prepared
  holdout: Holdout
  /** Ways to compare segments; undefined as the library's settings say. */
  matchers: readonly (MatcherWish | undefined)[]
  seed?: number | undefined
}

/** One evaluation for each matcher, each as if it were alone; what they have in common is done once. */
export async function evaluateMatchers(
  run: RunParts,
  { prepared, holdout, matchers, seed = 1 }: EvaluateJob,
  onProgress: OnProgress = () => {},
): Promise<Result<Evaluation[]>> {
  const plan = planFolds(prepared, holdout, seed)
  if (!plan.ok) return plan
  const { folds } = plan.value
  const shared = { prepared, holdout, seed, matchers }
  const rounds = await run('evaluate', shared, [...folds.keys()], onProgress)
  if (!rounds.ok) return rounds
  onProgress({ done: folds.length, total: folds.length, what: WORK_PROGRESS.counting })
  return ok(
    matchers.map((_, at) => {
      const own = rounds.value.map((round) => round[at]!)
      return together(prepared, holdout, plan.value, own)
    }),
  )
}

function together(
  { gestures: all, takes, settings, target }: Prepared,
  holdout: Holdout,
  { skipped }: FoldPlan,
  rounds: readonly Round[],
): Evaluation {
  const gestures = all.map(({ id, name }) => ({ id, name }))
  const outcomes = rounds.flatMap((round) => round.outcomes)
  const background = rounds.reduce(
    (sum, round) => addBackground(sum, round.background),
    NO_BACKGROUND,
  )
  return {
    holdout,
    thresholdFactor: settings.thresholdFactor,
    gestures,
    testers: [...new Set(takes.map(({ take }) => take.testerCode))].sort(),
    ...scoresOf(gestures, outcomes),
    outcomes,
    skipped,
    background: scoreBackground(background, target.rateHz),
    folds: rounds.map((round) => round.fold),
  }
}

function firstOf(evaluations: Result<Evaluation[]>): Result<Evaluation> {
  return evaluations.ok ? ok(evaluations.value[0]!) : evaluations
}
