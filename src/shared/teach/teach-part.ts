import type { Core } from '../core/core'
import { type Fold, planFolds } from '../evaluation/folds'
import type { Holdout } from '../model/evaluation'
import type { RecogniserModel } from '../model/recogniser-model'
import { ok, type Result } from '../model/result'
import { AXES } from '../model/sample'
import type { PartJob } from '../parts/parts'
import { type CutInput, cutTake } from '../training/cut-take'
import type { Prepared } from '../training/prepare'
import { runStream } from '../training/stream'
import { trainPrepared } from '../training/train-model'
import { WORK_PROGRESS } from '../words/en/progress-work'
import { teachTakes } from './teach-takes'

/** Takes of one gesture as the board would have read them, to be taught. */
export interface TaughtTakes {
  /** Gesture whose place is taken; null for one more. */
  gestureId: string | null
  takes: CutInput[]
}

export interface TeachShared {
  prepared: Prepared
  holdout: Holdout
  taught: TaughtTakes
}

/** Answered with the taught gesture. */
export const TAUGHT = 'taught'

/** What a round's model says to a held-out take before it is taught and after. */
export interface TeachOutcome {
  takeId: string
  testerCode: string
  /** Ids of gestures; null for a reject. */
  truth: string
  before: string | null
  after: string | typeof TAUGHT | null
}

export interface TeachRound {
  /** Whether the round's model let itself be taught with these takes. */
  accepted: boolean
  outcomes: TeachOutcome[]
  /** Movements in the background that were answered with the taught gesture. */
  activations: number
  backgroundSamples: number
}

/** One round of held-out takes by its number; models are trained with templates alone. */
export const teachPart: PartJob<TeachShared, number, TeachRound> = {
  open(core, { prepared, holdout, taught }) {
    const plan = planFolds(prepared, holdout, 1)
    if (!plan.ok) return plan
    return ok((index, onProgress) => {
      const fold = plan.value.folds[index]!
      onProgress({ done: 0, total: 1, what: WORK_PROGRESS.holdingOut(fold.heldOut) })
      return teachFold(core, fold, taught)
    })
  },
}

function teachFold(core: Core, { train, test }: Fold, taught: TaughtTakes): Result<TeachRound> {
  const trained = trainPrepared(core, train, { matcher: 'template' })
  if (!trained.ok) return trained
  const { model, bytes } = trained.value
  core.load(bytes)
  const asked = test.takes.map((take) => answerTo(core, model, take, null))
  const number = teachModel(core, model, taught)
  const outcomes = test.takes.map((prepared, i): TeachOutcome => {
    const { id, testerCode, gestureId } = prepared.take
    const before = asked[i] ?? null
    const after = number === null ? before : answerTo(core, model, prepared, number)
    return { takeId: id, testerCode, truth: gestureId, before, after }
  })
  const heard = number === null || model.button ? [] : test.backgrounds
  const events = heard.flatMap(({ counts }) =>
    runStream(core, counts, model.segmenter, { taught: true }),
  )
  return ok({
    accepted: number !== null,
    outcomes,
    activations: events.filter(({ event }) => event.kind === 'gesture' && event.gesture === number)
      .length,
    backgroundSamples: heard.reduce((sum, { counts }) => sum + counts.length / AXES, 0),
  })
}

/** @returns number of the taught gesture in events; null when it was refused */
function teachModel(core: Core, model: RecogniserModel, taught: TaughtTakes): number | null {
  core.openTeaching({ slots: 1, takes: taught.takes.length })
  const place = model.gestures.findIndex(({ id }) => id === taught.gestureId)
  const teaching = teachTakes(core, model, place < 0 ? null : place, taught.takes)
  return teaching?.answer.status === 'done' ? teaching.gesture : null
}

/** @param taught number of the taught gesture; null when nothing was taught */
function answerTo(
  core: Core,
  model: RecogniserModel,
  take: CutInput,
  taught: number | null,
): string | null {
  const event = cutTake(core, take, model, taught !== null).movement?.event
  if (event?.kind !== 'gesture' || event.gesture === null) return null
  return event.gesture === taught ? TAUGHT : (model.gestures[event.gesture]?.id ?? null)
}
