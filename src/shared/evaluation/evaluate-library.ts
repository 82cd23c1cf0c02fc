import type { Core } from '../core/core'
import type { Evaluation, Holdout } from '../model/evaluation'
import type { FullLibrary, MatcherWish } from '../model/library'
import { ok, type Result } from '../model/result'
import type { RunParts } from '../parts/part-jobs'
import { partsHere } from '../parts/parts-here'
import type { OnProgress } from '../protocol/recogniser'
import { outlineLibrary } from '../training/prepare'
import { addBackground, NO_BACKGROUND, scoreBackground } from './background-score'
import { planFolds } from './folds'
import { scoresOf } from './scores'

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

/** `evaluateInParts` on this thread. */
export function evaluateLibrary(
  core: Core,
  full: FullLibrary,
  holdout: Holdout,
  onProgress: OnProgress = () => {},
  { shouldStop, pause, ...options }: EvaluateHereOptions = {},
): Promise<Result<Evaluation>> {
  const run = partsHere(core, { shouldStop, pause })
  return evaluateInParts(run, full, holdout, onProgress, options)
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
  { seed = 1, matcher }: EvaluateOptions = {},
): Promise<Result<Evaluation>> {
  onProgress({ done: 0, total: 1, what: 'conditioning the recordings' })
  const outline = outlineLibrary(full)
  const plan = planFolds(outline, holdout, seed)
  if (!plan.ok) return plan
  const { folds, skipped } = plan.value
  const rounds = await run(
    'evaluate',
    { full, holdout, seed, matcher },
    [...folds.keys()],
    onProgress,
  )
  if (!rounds.ok) return rounds
  onProgress({ done: folds.length, total: folds.length, what: 'counting' })
  const gestures = outline.gestures.map(({ id, name }) => ({ id, name }))
  const outcomes = rounds.value.flatMap((round) => round.outcomes)
  const background = rounds.value.reduce(
    (sum, round) => addBackground(sum, round.background),
    NO_BACKGROUND,
  )
  return ok({
    holdout,
    thresholdFactor: outline.settings.thresholdFactor,
    gestures,
    testers: [...new Set(outline.takes.map(({ take }) => take.testerCode))].sort(),
    ...scoresOf(gestures, outcomes),
    outcomes,
    skipped,
    background: scoreBackground(background, outline.target.rateHz),
    folds: rounds.value.map((round) => round.fold),
  })
}
