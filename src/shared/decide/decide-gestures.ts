import type { Core } from '../core/core'
import { planFolds } from '../evaluation/folds'
import type { Rate } from '../model/evaluation'
import type { FullLibrary } from '../model/library'
import { fail, ok, type Result } from '../model/result'
import type { RunParts } from '../parts/part-jobs'
import { partsHere } from '../parts/parts-here'
import type { OnProgress } from '../protocol/recogniser'
import { clusteredRate, rateByTester } from '../statistics/clustered'
import { median } from '../statistics/summary'
import { outlineLibrary } from '../training/prepare'
import { MEASURE_TROUBLE } from '../words/en/measure-trouble'
import { adviceFor } from './advice'
import type { GestureDecision, KeptSet, PairReport, PieceCount, View } from './gesture-decision'
import type { GesturePart, GestureValue, SeenTake, ViewDetails, ViewValue } from './gesture-part'
import type { TakeAnswer } from './measure-fold'
import { medianInterval } from './median-interval'
import { toldByValue } from './scalars'

/** `decideGesturesInParts` on this thread. */
export function decideGestures(
  core: Core,
  full: FullLibrary,
  onProgress: OnProgress = () => {},
): Promise<Result<GestureDecision>> {
  return decideGesturesInParts(partsHere(core), full, onProgress)
}

/**
 * How each pair of gestures is told apart, by what, and which gestures to keep. Testers are held out,
 * or takes where there is one tester.
 * Codes: 'decide/one-gesture', those of planFolds, trainPrepared and of whoever runs the parts.
 */
export async function decideGesturesInParts(
  run: RunParts,
  full: FullLibrary,
  onProgress: OnProgress = () => {},
): Promise<Result<GestureDecision>> {
  const outline = outlineLibrary(full)
  const known = new Set(outline.takes.map(({ gesture }) => gesture))
  if (known.size < 2) {
    return fail('decide/one-gesture', MEASURE_TROUBLE.nothingToTellApart)
  }
  const testers = [...new Set(outline.takes.map(({ take }) => take.testerCode))].sort()
  const holdout = testers.length > 1 ? 'tester' : 'take'
  const plan = planFolds(outline, holdout, 1)
  if (!plan.ok) return plan
  const views = viewsFor(full)
  const parts: GesturePart[] = [
    ...views.map((view) => ({ kind: 'view' as const, view })),
    ...plan.value.folds.map((_, fold) => ({ kind: 'round' as const, fold })),
  ]
  const values = await run('gestures', { full, holdout }, parts, onProgress)
  if (!values.ok) return values
  const gestures = outline.gestures.map(({ id, name }) => ({ id, name }))
  return ok({ holdout, gestures, testers, ...join(values.value, views) })
}

/** Looks that can say something on this library. */
function viewsFor({ library, recordings }: FullLibrary): View[] {
  const takes = recordings.filter(({ recording }) => recording.kind === 'take')
  const gyro = takes.every(({ recording }) => recording.device.hasGyro)
  return [
    'recogniser',
    ...(gyro ? (['shape', 'accelerometer'] as const) : []),
    ...(library.training.rollAlign ? (['unaligned'] as const) : []),
  ]
}

function join(values: readonly GestureValue[], views: readonly View[]) {
  const looks = new Map<View, ViewValue>()
  const answers: TakeAnswer[] = []
  for (const [index, value] of values.entries()) {
    if (value.kind === 'view') looks.set(views[index]!, value)
    else answers.push(...value.answers)
  }
  const own = looks.get('recogniser')!
  const details = own.details!
  const measured = details.profiles.map(({ gesture }) => gesture)
  const pairs = measured.flatMap((first) =>
    measured
      .filter((second) => second > first)
      .map((second) => pairOf(looks, answers, first, second)),
  )
  const sets = details.sets.map(
    ({ choice, unseen }): KeptSet => ({ ...choice, unseen: clusteredRate(unseen) }),
  )
  return {
    takes: own.takes.length,
    uncut: own.uncut,
    accuracy: rateByTester(answers.map(({ tester, right }) => ({ tester, hit: right }))),
    pairs,
    profiles: details.profiles,
    length: details.length,
    channels: details.channels,
    subsets: sets,
  }
}

function pairOf(
  looks: ReadonlyMap<View, ViewValue>,
  answers: readonly TakeAnswer[],
  first: number,
  second: number,
): PairReport {
  const told = (view: View) => {
    const look = looks.get(view)
    return look === undefined ? null : toldApart(look.takes, first, second, view)
  }
  const { takes, details } = looks.get('recogniser')!
  const valued = (of: (motion: NonNullable<typeof details>['motions'][0]['motion']) => number) =>
    details!.motions.map(({ gesture, tester, motion }) => ({ gesture, tester, value: of(motion) }))
  const bySizes = [
    toldByValue(
      valued(({ gyroSize }) => gyroSize),
      first,
      second,
    ),
    toldByValue(
      valued(({ accelSize }) => accelSize),
      first,
      second,
    ),
  ]
  const pair = {
    first,
    second,
    told: {
      recogniser: told('recogniser'),
      shape: told('shape'),
      accelerometer: told('accelerometer'),
      unaligned: told('unaligned'),
    },
    margin: medianInterval(marginsOf(takes, first, second)),
    courseMargin: medianInterval(marginsOf(looks.get('shape')?.takes ?? [], first, second)),
    turningDps: Math.min(...[first, second].map((gesture) => turningOf(details!.motions, gesture))),
    byDuration: toldByValue(
      valued(({ durationMs }) => durationMs),
      first,
      second,
    ),
    bySize: bySizes.reduce((a, b) => (b.value > a.value ? b : a)),
    byTurn: toldByValue(
      valued(({ turn }) => turn),
      first,
      second,
    ),
    pieces: piecesOf(answers, first, second),
  }
  return { ...pair, advice: adviceFor(pair) }
}

function turningOf(motions: ViewDetails['motions'], gesture: number): number {
  const own = motions.filter((one) => one.gesture === gesture)
  return own.length === 0 ? 0 : median(own.map(({ motion }) => motion.gyroSize))
}

function isOf(first: number, second: number) {
  return ({ gesture }: { gesture: number }) => gesture === first || gesture === second
}

/** Without the gyroscope some movements are not even cut out: those are not told apart there. */
function toldApart(takes: readonly SeenTake[], first: number, second: number, view: View): Rate {
  return rateByTester(
    takes.filter(isOf(first, second)).flatMap(({ gesture, tester, nearest }) => {
      if (nearest.length === 0) return view === 'accelerometer' ? [{ tester, hit: false }] : []
      const own = nearest[gesture]!
      const other = nearest[gesture === first ? second : first]!
      return Number.isFinite(own) && Number.isFinite(other) ? [{ tester, hit: own < other }] : []
    }),
  )
}

/** ln(distance to the other / distance to the own) of each take of either. */
function marginsOf(takes: readonly SeenTake[], first: number, second: number): number[] {
  const cut = takes.filter(({ nearest }) => nearest.length > 0)
  return cut.filter(isOf(first, second)).flatMap(({ gesture, nearest }) => {
    const margin =
      Math.log(Math.max(1, nearest[gesture === first ? second : first]!)) -
      Math.log(Math.max(1, nearest[gesture]!))
    return Number.isFinite(margin) ? [margin] : []
  })
}

/** The direction in which pieces of one are answered as the other more often; null for neither. */
function piecesOf(
  answers: readonly TakeAnswer[],
  first: number,
  second: number,
): PieceCount | null {
  const count = (whole: number, part: number): PieceCount => ({
    whole,
    part,
    rate: rateByTester(
      answers
        .filter(({ gesture }) => gesture === whole)
        .map(({ tester, pieces }) => ({ tester, hit: pieces.includes(part) })),
    ),
  })
  const both = [count(first, second), count(second, first)]
  const more = both.reduce((a, b) => (b.rate.hits > a.rate.hits ? b : a))
  return more.rate.hits === 0 ? null : more
}
