import type { Core } from '../core/core'
import { encodeModel } from '../format/model-bytes'
import { sha256Hex } from '../format/sha256'
import type { TrainedModel } from '../model/evaluation'
import type { FullLibrary, MatcherWish } from '../model/library'
import type { ModelGesture, ModelSegmenter, RecogniserModel } from '../model/recogniser-model'
import { fail, ok, type Result } from '../model/result'
import type { OnProgress } from '../protocol/recogniser'
import { WORK_PROGRESS } from '../words/en/progress-work'
import { TRAINING_TROUBLE } from '../words/en/training-trouble'
import type { PerSensor } from './amplitudes'
import { ramBytesOf, templateLimits } from './budget'
import { cutTake } from './cut-take'
import { CUTS_ONLY, cuttingModel, cuttingModelBytes } from './cutting-model'
import { cutStreamsOf, streamsOf } from './energy'
import { distancesBetween, type Example } from './examples'
import { fitLibrary } from './kernel/fit-library'
import type { MatcherFit } from './kernel/fit-matcher'
import { learnKernelThresholds } from './kernel/kernel-thresholds'
import type { KnownDistances } from './known-distances'
import {
  type CutPrepared,
  chooseMatcher,
  isUsable,
  type Matcher,
  noiseFloors,
  readExamples,
  warpOf,
} from './matcher-search'
import { notesOn } from './notes'
import { type Prepared, prepareLibrary } from './prepare'
import { proposeSegmenter, type SegmenterProposal } from './segmenter-search'
import { chooseTemplates } from './template-choice'
import { learnThresholds } from './threshold-evidence'

export interface TrainOptions {
  onProgress?: OnProgress
  /** As the library's settings say by default. */
  matcher?: MatcherWish
  /** As seeMovements has it, when that was asked before. */
  seen?: SeenMovements
  /** Distances of rounds before, where there are more rounds to come. */
  distances?: KnownDistances
  /** Whether to look for what is worth a note, which nobody reads in an evaluation; true by default. */
  notes?: boolean
}

/** Movements of a library, before there is a choice how to compare them. */
export interface SeenMovements {
  proposal: SegmenterProposal
  cuts: CutPrepared[]
  /** As noiseFloors has them. */
  floors: PerSensor
}

const STEPS = 5

/**
 * Trains a model on everything in the library: templates, kernel features or both, as wished. Everything that the board does too (cutting,
 * normalising, warping) is done by the core; here is only chosen between what it answers.
 * Takes a second or a few for some hundred takes.
 * Codes: 'train/no-takes', 'train/no-movement', 'train/budget'.
 */
export function trainModel(
  core: Core,
  full: FullLibrary,
  options: TrainOptions = {},
): Result<TrainedModel> {
  options.onProgress?.({ done: 0, total: STEPS, what: WORK_PROGRESS.conditioning })
  return trainPrepared(core, prepareLibrary(full), options)
}

/**
 * Where movements start and end.
 * Codes: 'train/no-takes', 'train/no-movement'.
 */
export function seeMovements(core: Core, prepared: Prepared): Result<SeenMovements> {
  if (prepared.takes.length === 0) {
    return fail('train/no-takes', TRAINING_TROUBLE.noTakes)
  }
  const proposal = proposeSegmenter(core, prepared)
  const cuts = cutAll(core, prepared, proposal.segmenter)
  if (!cuts.some(({ result }) => isUsable(result))) {
    return fail('train/no-movement', TRAINING_TROUBLE.noMovement)
  }
  return ok({ proposal, cuts, floors: noiseFloors(core, prepared, proposal.segmenter) })
}

/** The same from a library already conditioned. */
export function trainPrepared(
  core: Core,
  prepared: Prepared,
  options: TrainOptions = {},
): Result<TrainedModel> {
  const { onProgress, matcher: wish = prepared.settings.matcher ?? 'template' } = options
  const noted = options.notes ?? true
  const say = (done: number, what: string) => onProgress?.({ done, total: STEPS, what })
  say(1, WORK_PROGRESS.finding)
  const seen = options.seen === undefined ? seeMovements(core, prepared) : ok(options.seen)
  if (!seen.ok) return seen
  const { proposal, cuts, floors } = seen.value
  const levelled = wish !== 'template'
  say(2, WORK_PROGRESS.comparingWays)
  const matcher = chooseMatcher(core, prepared, proposal.segmenter, cuts, levelled, floors)
  const examples = readExamples(core, prepared, proposal.segmenter, matcher, cuts)
  say(3, wish === 'template' ? WORK_PROGRESS.choosingTemplates : WORK_PROGRESS.fittingKernel)
  const fit = wish === 'template' ? null : fitLibrary(core, prepared, matcher, examples, wish)
  if (fit?.kernel) {
    say(4, WORK_PROGRESS.thresholds)
    const model = assemble(prepared, proposal.segmenter, matcher, examples, fit.chosenOf)
    model.kernel = fit.kernel
    learnKernelThresholds(core, prepared, model, fit.classed, fit)
    return ok(describe(model, prepared, proposal, examples, fit, noted))
  }
  const limits = templateLimits(
    prepared,
    matcher.normaliser,
    new Set(examples.map((e) => e.gesture)).size,
  )
  if (limits === null) {
    return fail('train/budget', TRAINING_TROUBLE.overBudget(prepared.target.modelBudgetBytes))
  }
  const warp = warpOf(matcher)
  const table =
    options.distances?.between(core, examples, warp) ?? distancesBetween(core, examples, warp)
  const chosen = chooseTemplates(table, examples, prepared.gestures.length, limits)
  say(4, WORK_PROGRESS.thresholds)
  const model = assemble(prepared, proposal.segmenter, matcher, examples, chosen)
  learnThresholds(core, prepared, model, { table, examples, chosen })
  return ok(describe(model, prepared, proposal, examples, fit, noted))
}

function cutAll(core: Core, prepared: Prepared, segmenter: ModelSegmenter): CutPrepared[] {
  const { takes, target } = prepared
  if (prepared.settings.segmentation !== 'button') {
    const counts = takes.map((take) => take.counts)
    const streams = streamsOf(core, target, counts, segmenter, true)
    return cutStreamsOf(core, takes, streams, segmenter).map((result, i) => {
      return { take: takes[i]!, result, byMotion: { segmenter, movement: result.movement } }
    })
  }
  const options = { segmenter, normaliser: CUTS_ONLY, button: true }
  core.load(cuttingModelBytes(target, options))
  const model = cuttingModel(target, options)
  return takes.map((take) => ({ take, result: cutTake(core, take, model) }))
}

/** The model with thresholds still at nought. Gestures without a usable take are not in it. */
function assemble(
  prepared: Prepared,
  segmenter: ModelSegmenter,
  matcher: Matcher,
  examples: readonly Example[],
  chosen: readonly number[][],
): RecogniserModel {
  const gestures = prepared.gestures.flatMap(({ id, name }, index): ModelGesture[] => {
    if (!examples.some((example) => example.gesture === index)) return []
    const templates = chosen[index]!.map((i) => examples[i]!)
    return [
      {
        id,
        name,
        threshold: 0,
        templates: templates.map((example) => example.query),
        templateTakeIds: templates.map((example) => example.id),
      },
    ]
  })
  const { settings, target } = prepared
  return {
    ...cuttingModel(target, {
      segmenter,
      normaliser: matcher.normaliser,
      rollAlign: settings.rollAlign,
      button: settings.segmentation === 'button',
    }),
    band: matcher.band,
    cost: matcher.cost,
    gestures,
  }
}

function describe(
  model: RecogniserModel,
  prepared: Prepared,
  proposal: SegmenterProposal,
  examples: readonly Example[],
  fit: MatcherFit | null,
  noted: boolean,
): TrainedModel {
  const bytes = encodeModel(model)
  const usedTakeIds = examples.map((example) => example.id)
  const used = new Set(usedTakeIds)
  return {
    model,
    bytes,
    hash: sha256Hex(bytes),
    tableBytes: bytes.length,
    ramBytes: ramBytesOf(model),
    usedTakeIds,
    uncutTakeIds: prepared.takes.map(({ take }) => take.id).filter((id) => !used.has(id)),
    notes: noted ? notesOn(prepared, proposal, model, examples) : [],
    distancePerLog: fit?.perLog ?? null,
    choice: fit?.says ?? '',
  }
}
