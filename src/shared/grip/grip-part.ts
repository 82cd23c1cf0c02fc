import type { Core } from '../core/core'
import { type Fold, planFolds } from '../evaluation/folds'
import type { FullLibrary, RecordingWithSamples } from '../model/library'
import type { RecogniserModel } from '../model/recogniser-model'
import { ok, type Result } from '../model/result'
import type { PartJob } from '../parts/parts'
import type { OnProgress } from '../protocol/recogniser'
import { cutTake } from '../training/cut-take'
import { outlineLibrary, type Prepared, prepareLibrary } from '../training/prepare'
import { trainPrepared } from '../training/train-model'
import { WORK_PROGRESS } from '../words/en/progress-work'
import type { Remedy } from './grip-tolerance'
import { type GripChange, turnLibrary } from './turn-samples'

/** What all rounds of a measurement share. */
export interface GripShared {
  full: FullLibrary
  holdout: 'tester' | 'take'
  seed: number
  remedies: readonly Remedy[]
  changes: readonly GripChange[]
  /** Test takes a round at most. */
  takesPerRound: number
}

export interface Tally {
  hits: number
  n: number
}

/** What one round found out. */
export interface GripRound {
  /** For each change, for each remedy. */
  tallies: Tally[][]
  /** Of the model of each remedy. */
  tableBytes: number[]
  /** Takes as recorded whose roll could not be known where gravity aligns. */
  unknown: Tally
  rollMinPercent: number
}

/** Each take is trained on in this many grips, with as many times the templates, at most 16. */
const COPIES = 2
const COPIES_TEMPLATES = 4
/** Turns that fill the circle evenly however many there are: multiples of the golden angle, deg. */
const GOLDEN_ANGLE_DEG = 137.50776405003785

/** One round of a measurement, by its number in the plan. */
export const gripPart: PartJob<GripShared, number, GripRound> = {
  open(core, shared) {
    const folds = planGrip(shared)
    if (!folds.ok) return folds
    return ok((index, onProgress) => runRound(core, shared, folds.value[index]!, onProgress))
  },
}

/** Rounds in which nobody's takes are in both halves. */
export function planGrip({ full, holdout, seed }: GripShared): Result<Fold[]> {
  const plan = planFolds(outlineLibrary(variantOf(full, 'mark')), holdout, seed)
  return plan.ok ? ok(plan.value.folds) : plan
}

type Trained = Pick<GripRound, 'rollMinPercent'> & { model: RecogniserModel; bytes: Uint8Array }

function runRound(
  core: Core,
  shared: GripShared,
  fold: Fold,
  onProgress: OnProgress,
): Result<GripRound> {
  const { full, remedies, changes } = shared
  let done = 0
  const total = remedies.length + changes.length
  const step = (what: string) => onProgress({ done: done++, total, what })
  const isTraining = trainingOf(fold)
  const models: Trained[] = []
  for (const remedy of remedies) {
    step(WORK_PROGRESS.trainingFor(fold.heldOut, remedy))
    const recordings = full.recordings.filter(isTraining)
    const trained = trainPrepared(core, prepareLibrary(variantOf({ ...full, recordings }, remedy)))
    if (!trained.ok) return trained
    const { model, bytes } = trained.value
    models.push({ model, bytes, rollMinPercent: model.rollMinPercent })
  }
  const held = new Set(choose(fold.test, shared.takesPerRound).map(({ take }) => take.id))
  const unknown = { hits: 0, n: 0 }
  const tallies = changes.map((change) => {
    step(WORK_PROGRESS.turning(fold.heldOut, change))
    return test(core, shared, change, held, models, unknown)
  })
  return ok({
    tallies,
    tableBytes: models.map(({ bytes }) => bytes.length),
    unknown,
    rollMinPercent: models.at(-1)?.rollMinPercent ?? 0,
  })
}

function trainingOf({ train }: Fold): (one: RecordingWithSamples) => boolean {
  const ids = new Set([
    ...train.takes.map(({ take }) => take.id),
    ...train.backgrounds.map(({ background }) => background.id),
  ])
  return ({ recording }) => ids.has(recording.id)
}

/** The library as a remedy trains it: alignment, number of templates, and copies turned all round. */
function variantOf(full: FullLibrary, remedy: Remedy): FullLibrary {
  const { training } = full.library
  const templates = Math.min(16, training.templatesPerGesture * COPIES_TEMPLATES)
  const library = {
    ...full.library,
    training: {
      ...training,
      rollAlign: remedy === 'gravity',
      templatesPerGesture: remedy === 'copies' ? templates : training.templatesPerGesture,
    },
  }
  const own = { ...full, library }
  if (remedy !== 'copies') return own
  const copied = own.recordings.flatMap((one) =>
    one.recording.kind === 'take' ? Array.from({ length: COPIES }, () => one) : [one],
  )
  return turnLibrary({ ...own, recordings: copied }, (_, index) => {
    return { rollDeg: (index * GOLDEN_ANGLE_DEG) % 360, tiltDeg: 0 }
  })
}

/** Takes of a round that are tested: every k-th, so that gestures and testers keep their shares. */
function choose({ takes }: Prepared, most: number): Prepared['takes'] {
  const step = Math.max(1, takes.length / most)
  const byGesture = [...takes].sort((a, b) => a.gesture - b.gesture)
  return byGesture.filter((_, i) => Math.floor(i / step) !== Math.floor((i - 1) / step))
}

/** Held-out takes turned by the change, by the model of each remedy. */
function test(
  core: Core,
  { full, remedies }: GripShared,
  change: GripChange,
  held: ReadonlySet<string>,
  models: readonly Trained[],
  unknown: Tally,
): Tally[] {
  const recordings = full.recordings.filter(({ recording }) => held.has(recording.id))
  const prepared = prepareLibrary(turnLibrary({ ...full, recordings }, () => change))
  const asRecorded = change.rollDeg === 0 && change.tiltDeg === 0
  return remedies.map((remedy, index) => {
    const { model, bytes } = models[index]!
    const tally = { hits: 0, n: 0 }
    core.load(bytes)
    for (const take of prepared.takes) {
      const event = cutTake(core, take, model).movement?.event
      const named = event?.kind === 'gesture' && event.gesture !== null ? event.gesture : null
      count(tally, named !== null && model.gestures[named]?.id === take.take.gestureId)
      if (remedy !== 'gravity' || !asRecorded || event === undefined) continue
      count(unknown, event.roll === 'vertical' || event.roll === 'no-rest')
    }
    return tally
  })
}

function count(tally: Tally, hit: boolean): void {
  tally.n++
  if (hit) tally.hits++
}
