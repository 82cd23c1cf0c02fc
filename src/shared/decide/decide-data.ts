import type { Core } from '../core/core'
import { addBackground, NO_BACKGROUND } from '../evaluation/background-score'
import { planFolds } from '../evaluation/folds'
import { hoursMissingToClaim } from '../evaluation/trade-off'
import type { FullLibrary } from '../model/library'
import { ok, type Result } from '../model/result'
import type { RunParts } from '../parts/part-jobs'
import { partsHere } from '../parts/parts-here'
import type { OnProgress } from '../protocol/recogniser'
import { clusteredRate } from '../statistics/clustered'
import { poissonPerHour } from '../statistics/poisson'
import { median } from '../statistics/summary'
import { outlineLibrary, type Prepared } from '../training/prepare'
import type { CurvePart, CurveValue } from './curve-part'
import type {
  CurvePoint,
  DataDecision,
  ExpectedGain,
  GestureErrors,
  LearningCurve,
  NextKind,
} from './data-decision'
import { expectedGain, type Trial } from './learning-gain'

export interface DataOptions {
  /** Of the draws; the same seed draws the same takes. */
  seed?: number
  /** Draws of takes or testers for each point. */
  draws?: number
  /** Rounds at most; further testers stay in training. */
  rounds?: number
}

const DRAWS = 3
const ROUNDS = 6
const TAKE_COUNTS = [1, 2, 3, 5, 8, 12, 20, 30]
const TESTER_COUNTS = [1, 2, 3, 4, 6, 8, 12, 16, 24]
/** Takes a gesture that one more sitting brings from each tester. */
const MORE_TAKES = 2
/** False activations an hour that a designer will want to claim to be below. */
const CLAIM_PER_HOUR = 1

/** `decideDataInParts` on this thread. */
export function decideData(
  core: Core,
  full: FullLibrary,
  onProgress: OnProgress = () => {},
  options: DataOptions = {},
): Promise<Result<DataDecision>> {
  return decideDataInParts(partsHere(core), full, onProgress, options)
}

/**
 * How held-out accuracy grows with takes and with testers, drawn repeatedly from what is there, and
 * what is most worth recording next.
 * Codes: those of planFolds, trainPrepared and of whoever runs the parts.
 */
export async function decideDataInParts(
  run: RunParts,
  full: FullLibrary,
  onProgress: OnProgress = () => {},
  { seed = 1, draws = DRAWS, rounds = ROUNDS }: DataOptions = {},
): Promise<Result<DataDecision>> {
  const outline = outlineLibrary(full)
  const testers = [...new Set(outline.takes.map(({ take }) => take.testerCode))].sort()
  const holdout = testers.length > 1 ? 'tester' : 'take'
  const plan = planFolds(outline, holdout, 1)
  if (!plan.ok) return plan
  const folds = spread(plan.value.folds.length, rounds)
  const most = {
    takes: takesOfEach(outline, holdout === 'take' ? plan.value.folds.length : 0),
    testers: testers.length - 1,
  }
  const counts = {
    takes: TAKE_COUNTS.filter((count) => count < most.takes),
    testers: TESTER_COUNTS.filter((count) => count < most.testers),
  }
  const parts: CurvePart[] = folds.flatMap((fold) => [
    { fold, axis: 'all', count: 0, draw: 0 },
    ...(['takes', 'testers'] as const).flatMap((axis) =>
      counts[axis].flatMap((count) =>
        Array.from({ length: draws }, (_, draw): CurvePart => ({ fold, axis, count, draw })),
      ),
    ),
  ])
  const values = await run('curve', { full, holdout, seed }, parts, onProgress)
  if (!values.ok) return values
  const done = parts.map((part, index): Done => ({ part, value: values.value[index]! }))
  const curves = {
    takes: counts.takes.length > 0 ? curveOf(done, 'takes', most.takes, MORE_TAKES) : null,
    byTesters: counts.testers.length > 0 ? curveOf(done, 'testers', most.testers, 1) : null,
  }
  const gestures = outline.gestures.map(({ id, name }) => ({ id, name }))
  const background = backgroundOf(done, outline.target.rateHz)
  return ok({
    holdout,
    gestures,
    testers,
    ...curves,
    errors: errorsOf(done, gestures.length),
    background,
    next: nextOf(curves, background, testers.length, gestures.length, most.takes),
  })
}

interface Done {
  part: CurvePart
  value: CurveValue
}

/** Indices of at most so many of a number of rounds, spread evenly. */
function spread(count: number, most: number): number[] {
  if (count <= most) return Array.from({ length: count }, (_, index) => index)
  return Array.from({ length: most }, (_, i) => Math.floor((i * count) / most))
}

/** Takes of each gesture that a tester usually has in training. */
function takesOfEach({ takes }: Prepared, takeFolds: number): number {
  const cells = new Map<string, number>()
  for (const { take, gesture } of takes) {
    const key = `${gesture} ${take.testerCode}`
    cells.set(key, (cells.get(key) ?? 0) + 1)
  }
  const usual = median([...cells.values()])
  return Math.floor(takeFolds > 0 ? (usual * (takeFolds - 1)) / takeFolds : usual)
}

function curveOf(
  done: readonly Done[],
  axis: 'takes' | 'testers',
  most: number,
  more: number,
): LearningCurve {
  const used = done.filter(({ part }) => part.axis === axis || part.axis === 'all')
  const countOf = ({ axis: own, count }: CurvePart) => (own === 'all' ? most : count)
  const counts = [...new Set(used.map(({ part }) => countOf(part)))].sort((a, b) => a - b)
  const points = counts.map((count) =>
    pointOf(
      count,
      used.filter(({ part }) => countOf(part) === count),
    ),
  )
  const next = most + more
  const trials = used.flatMap(({ part, value }) => trialsOf(countOf(part), value))
  return { points, next, gain: expectedGain(trials, next) }
}

function trialsOf(count: number, { answers }: CurveValue): Trial[] {
  const testers = [...new Set(answers.map(({ tester }) => tester))]
  return testers.map((tester) => {
    const own = answers.filter((answer) => answer.tester === tester)
    return { tester, count, wrong: own.filter(({ right }) => !right).length, n: own.length }
  })
}

function pointOf(count: number, done: readonly Done[]): CurvePoint {
  const draws = [...new Set(done.map(({ part }) => part.draw))]
  const clusters = new Map<string, { hits: number; n: number }>()
  for (const { value } of done) {
    for (const { tester, right } of value.answers) {
      const cluster = clusters.get(tester) ?? { hits: 0, n: 0 }
      clusters.set(tester, { hits: cluster.hits + (right ? 1 : 0), n: cluster.n + 1 })
    }
  }
  const shares = draws.map((draw) => {
    const answers = done
      .filter(({ part }) => part.draw === draw)
      .flatMap((one) => one.value.answers)
    return answers.filter(({ right }) => right).length / Math.max(1, answers.length)
  })
  const each = [...clusters.values()].map(({ hits, n }) => ({
    hits: hits / draws.length,
    n: n / draws.length,
  }))
  return {
    count,
    rate: clusteredRate(each),
    draws: draws.length,
    least: Math.min(...shares),
    most: Math.max(...shares),
  }
}

function errorsOf(done: readonly Done[], gestureCount: number): GestureErrors[] {
  const answers = done
    .filter(({ part }) => part.axis === 'all')
    .flatMap(({ value }) => value.answers)
  const testers = [...new Set(answers.map(({ tester }) => tester))]
  return Array.from({ length: gestureCount }, (_, gesture): GestureErrors => {
    const own = answers.filter((answer) => answer.gesture === gesture)
    const clusters = testers.map((tester) => {
      const takes = own.filter((answer) => answer.tester === tester)
      return { hits: takes.filter(({ right }) => right).length, n: takes.length }
    })
    return {
      gesture,
      wrong: own.filter(({ right }) => !right).length,
      rate: clusteredRate(clusters),
    }
  })
    .filter(({ rate }) => rate.n > 0)
    .sort((a, b) => b.wrong - a.wrong)
}

function backgroundOf(done: readonly Done[], rateHz: number): DataDecision['background'] {
  const all = done.filter(({ part }) => part.axis === 'all')
  const { samples, activations } = all.reduce(
    (sum, { value }) => addBackground(sum, value.background),
    NO_BACKGROUND,
  )
  if (samples === 0) return null
  const { hours, low, high } = poissonPerHour(activations, samples / rateHz / 3600)
  return { hours, activations, low, high }
}

/** What is most worth recording: gains that are sure to be some first, by what a take of them brings. */
function nextOf(
  { takes, byTesters }: Pick<DataDecision, 'takes' | 'byTesters'>,
  background: DataDecision['background'],
  testers: number,
  gestures: number,
  takesOfEach: number,
): NextKind[] {
  if (testers < 3) return ['tester', 'takes', 'background']
  const perTake = (gain: ExpectedGain | null | undefined, cost: number) =>
    gain != null && gain.low > 0 ? gain.value / cost : 0
  const ranked: [NextKind, number][] = [
    ['tester', perTake(byTesters?.gain, gestures * takesOfEach)],
    ['takes', perTake(takes?.gain, gestures * testers * MORE_TAKES)],
  ]
  const useful = ranked.filter(([, gain]) => gain > 0).sort((a, b) => b[1] - a[1])
  const unsure =
    background === null || hoursMissingToClaim(background, CLAIM_PER_HOUR) > 0
      ? (['background'] as const)
      : []
  const kinds = [...useful.map(([kind]) => kind), ...unsure]
  return kinds.length > 0 ? kinds : ['nothing']
}
