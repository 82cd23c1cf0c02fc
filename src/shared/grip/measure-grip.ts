import type { Core } from '../core/core'
import { planFolds } from '../evaluation/folds'
import type { FullLibrary, RecordingWithSamples } from '../model/library'
import { ok, type Result } from '../model/result'
import type { OnProgress } from '../protocol/recogniser'
import { wilson } from '../statistics/wilson'
import { cutTake } from '../training/cut-take'
import { type Prepared, prepareLibrary } from '../training/prepare'
import { trainPrepared } from '../training/train-model'
import {
  type GripPoint,
  type GripTolerance,
  REMEDIES,
  type Remedy,
  ROLLS_DEG,
  TILTS_DEG,
} from './grip-tolerance'
import { type GripChange, turnLibrary } from './turn-samples'

export interface GripOptions {
  /** Test takes a round at most, spread over gestures; the rest is left out to save time. */
  takesPerRound?: number
  /** Rounds at most; further testers stay in training. */
  rounds?: number
  rolls?: readonly number[]
  tilts?: readonly number[]
  remedies?: readonly Remedy[]
  seed?: number
}

const TAKES_PER_ROUND = 40
const ROUNDS = 4
/** Each take is trained on in this many grips, with as many times the templates, at most 16. */
const COPIES = 2
const COPIES_TEMPLATES = 4
/** Turns that fill the circle evenly however many there are: multiples of the golden angle, deg. */
const GOLDEN_ANGLE_DEG = 137.50776405003785

interface Tally {
  hits: number
  n: number
}

/** One condition of holding, with its counts for each remedy. */
interface Condition {
  change: GripChange
  tallies: Map<Remedy, Tally>
}

/**
 * Recall of held-out takes against the grip. Raw samples of each held-out take are turned, conditioned
 * anew and run through the core by models of three kinds; nobody's takes are in both halves of a round.
 * Codes: those of planFolds and trainPrepared.
 */
export async function measureGrip(
  core: Core,
  full: FullLibrary,
  onProgress: OnProgress = () => {},
  options: GripOptions = {},
): Promise<Result<GripTolerance>> {
  const testers = new Set(full.recordings.map(({ recording }) => recording.testerCode))
  const holdout = testers.size > 1 ? 'tester' : 'take'
  const plain = variantOf(full, 'mark')
  const plan = planFolds(prepareLibrary(plain), holdout, options.seed ?? 1)
  if (!plan.ok) return plan
  const folds = plan.value.folds.slice(0, options.rounds ?? ROUNDS)
  const remedies = options.remedies ?? REMEDIES
  const run = new GripRun(core, full, remedies, options)
  const total = folds.length * (remedies.length + run.conditions.length)
  let done = 0
  const step = (what: string) => onProgress({ done: done++, total, what })
  for (const fold of folds) {
    const training = new Set(fold.train.takes.map(({ take }) => take.id))
    const held = new Set(run.choose(fold.test).map(({ take }) => take.id))
    const background = new Set(fold.train.backgrounds.map(({ background }) => background.id))
    const isTraining = ({ recording }: RecordingWithSamples) =>
      training.has(recording.id) || background.has(recording.id)
    for (const remedy of remedies) {
      step(`holding out ${fold.heldOut}: training, ${remedy}`)
      const trained = run.train(remedy, isTraining)
      if (!trained.ok) return trained
    }
    for (const condition of run.conditions) {
      step(`holding out ${fold.heldOut}: ${conditionName(condition.change)}`)
      run.test(condition, held)
    }
  }
  return ok({ ...run.result(), holdout, rounds: folds.length })
}

function conditionName({ rollDeg, tiltDeg }: GripChange): string {
  return tiltDeg === 0 ? `roll ${rollDeg}°` : `tilt ${tiltDeg}°`
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

class GripRun {
  readonly conditions: Condition[]
  readonly #core: Core
  readonly #full: FullLibrary
  readonly #remedies: readonly Remedy[]
  readonly #takesPerRound: number
  readonly #models = new Map<Remedy, { bytes: Uint8Array; model: Parameters<typeof cutTake>[2] }>()
  readonly #tableBytes = new Map<Remedy, number[]>()
  readonly #unknown: Tally = { hits: 0, n: 0 }
  #rollMinPercent = 0

  constructor(core: Core, full: FullLibrary, remedies: readonly Remedy[], options: GripOptions) {
    this.#core = core
    this.#full = full
    this.#remedies = remedies
    this.#takesPerRound = options.takesPerRound ?? TAKES_PER_ROUND
    const changes = [
      ...(options.rolls ?? ROLLS_DEG).map((rollDeg) => ({ rollDeg, tiltDeg: 0 })),
      ...(options.tilts ?? TILTS_DEG)
        .filter((tiltDeg) => tiltDeg !== 0)
        .map((tiltDeg) => ({ rollDeg: 0, tiltDeg })),
    ]
    this.conditions = changes.map((change) => ({
      change,
      tallies: new Map(remedies.map((remedy) => [remedy, { hits: 0, n: 0 }])),
    }))
  }

  /** Takes of a round that are tested: every k-th, so that gestures and testers keep their shares. */
  choose({ takes }: Prepared): Prepared['takes'] {
    const step = Math.max(1, takes.length / this.#takesPerRound)
    const byGesture = [...takes].sort((a, b) => a.gesture - b.gesture)
    return byGesture.filter((_, i) => Math.floor(i / step) !== Math.floor((i - 1) / step))
  }

  train(remedy: Remedy, isTraining: (one: RecordingWithSamples) => boolean): Result<null> {
    const own = { ...this.#full, recordings: this.#full.recordings.filter(isTraining) }
    const trained = trainPrepared(this.#core, prepareLibrary(variantOf(own, remedy)))
    if (!trained.ok) return trained
    const { model, bytes, tableBytes } = trained.value
    this.#models.set(remedy, { model, bytes })
    this.#tableBytes.set(remedy, [...(this.#tableBytes.get(remedy) ?? []), tableBytes])
    this.#rollMinPercent = model.rollMinPercent
    return ok(null)
  }

  test({ change, tallies }: Condition, held: ReadonlySet<string>): void {
    const recordings = this.#full.recordings.filter(({ recording }) => held.has(recording.id))
    const turned = turnLibrary({ ...this.#full, recordings }, () => change)
    const prepared = prepareLibrary(turned)
    for (const remedy of this.#remedies) {
      const { model, bytes } = this.#models.get(remedy)!
      this.#core.load(bytes)
      for (const take of prepared.takes) {
        const event = cutTake(this.#core, take, model).movement?.event
        const named = event?.kind === 'gesture' && event.gesture !== null ? event.gesture : null
        const right = named !== null && model.gestures[named]?.id === take.take.gestureId
        count(tallies.get(remedy)!, right)
        const asRecorded = change.rollDeg === 0 && change.tiltDeg === 0
        if (remedy !== 'gravity' || !asRecorded || event === undefined) continue
        count(this.#unknown, event.roll === 'vertical' || event.roll === 'no-rest')
      }
    }
  }

  result(): Pick<GripTolerance, 'remedies' | 'verticalDeg'> {
    const points = (remedy: Remedy, axis: 'rollDeg' | 'tiltDeg', other: 'rollDeg' | 'tiltDeg') =>
      this.conditions
        .filter(({ change }) => change[other] === 0)
        .map(({ change, tallies }): GripPoint => {
          const { hits, n } = tallies.get(remedy)!
          return { angleDeg: change[axis], recall: wilson(hits, n) }
        })
        .sort((a, b) => a.angleDeg - b.angleDeg)
    return {
      verticalDeg: (Math.asin(this.#rollMinPercent / 100) * 180) / Math.PI,
      remedies: this.#remedies.map((remedy) => ({
        remedy,
        roll: points(remedy, 'rollDeg', 'tiltDeg'),
        tilt: points(remedy, 'tiltDeg', 'rollDeg'),
        tableBytes: meanOf(this.#tableBytes.get(remedy) ?? []),
        rollUnknown: remedy === 'gravity' ? wilson(this.#unknown.hits, this.#unknown.n) : null,
      })),
    }
  }
}

function count(tally: Tally, hit: boolean): void {
  tally.n++
  if (hit) tally.hits++
}

function meanOf(values: readonly number[]): number {
  return Math.round(values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length))
}
