import type { Core } from '../core/core'
import { planFolds } from '../evaluation/folds'
import type { Holdout } from '../model/evaluation'
import type { FullLibrary } from '../model/library'
import { channelCount } from '../model/recogniser-model'
import { ok, type Result } from '../model/result'
import type { PartJob } from '../parts/parts'
import { type Prepared, prepareLibrary } from '../training/prepare'
import { WORK_PROGRESS } from '../words/en/progress-work'
import type { GestureProfile, View } from './gesture-decision'
import { type KeptChoice, keptSets } from './kept-sets'
import { measureFold, type TakeAnswer } from './measure-fold'
import { profilesOf } from './profiles'
import type { MotionVector } from './scalars'
import { motionOf, nearestOf, seeTakes, shapeMatcher, someTakes } from './seen-takes'
import { withoutGyro } from './without-gyro'

export interface GestureShared {
  full: FullLibrary
  holdout: Holdout
}

/** One way of looking, or one round of held-out takes by its number in the plan. */
export type GesturePart = { kind: 'view'; view: View } | { kind: 'round'; fold: number }

export type GestureValue = ({ kind: 'view' } & ViewValue) | { kind: 'round'; answers: TakeAnswer[] }

/** What one way of looking gives. */
export interface ViewValue {
  takes: SeenTake[]
  uncut: number
  /** Of the recogniser's own view only. */
  details: ViewDetails | null
}

export interface SeenTake {
  gesture: number
  tester: string
  /** Distance to the nearest held-out example of each gesture; Infinity for none, empty if uncut. */
  nearest: Float64Array
}

export interface ViewDetails {
  motions: { gesture: number; tester: string; motion: MotionVector }[]
  profiles: GestureProfile[]
  length: number
  channels: number
  sets: KeptChoice[]
}

export const gesturePart: PartJob<GestureShared, GesturePart, GestureValue> = {
  open(core, { full, holdout }) {
    const prepared = prepareLibrary(full)
    const plan = planFolds(prepared, holdout, 1)
    if (!plan.ok) return plan
    return ok((part, onProgress): Result<GestureValue> => {
      onProgress({ done: 0, total: 1, what: partWords(part, plan.value.folds) })
      if (part.kind === 'view')
        return ok({ kind: 'view', ...look(core, someTakes(prepared), part.view) })
      const round = measureFold(core, plan.value.folds[part.fold]!)
      return round.ok ? ok({ kind: 'round', answers: round.value.answers }) : round
    })
  },
}

function partWords(part: GesturePart, folds: readonly { heldOut: string }[]): string {
  if (part.kind === 'view') return WORK_PROGRESS.views[part.view]
  return WORK_PROGRESS.holdingOut(folds[part.fold]?.heldOut ?? '')
}

function look(core: Core, all: Prepared, view: View): ViewValue {
  const prepared = asSeen(all, view)
  const seen = seeTakes(core, prepared)
  const matcher = view === 'shape' ? shapeMatcher(core, prepared, seen) : seen.matcher
  const found = nearestOf(core, prepared, seen, matcher)
  const cut = new Map(found.examples.map(({ id }, i) => [id, found.nearest[i]!]))
  const takes = prepared.takes.map(({ gesture, take }): SeenTake => {
    const nearest = cut.get(take.id) ?? new Float64Array()
    return { gesture, tester: take.testerCode, nearest }
  })
  const uncut = takes.length - cut.size
  if (view !== 'recogniser') return { takes, uncut, details: null }
  const motions = motionOf(seen, prepared.target).flatMap((motion, i) => {
    const { gesture, take } = seen.cuts[i]!.take
    return motion === null ? [] : [{ gesture, tester: take.testerCode, motion }]
  })
  const details: ViewDetails = {
    motions,
    profiles: profilesOf(found.examples, motions, prepared.gestures.length),
    length: matcher.normaliser.length,
    channels: channelCount(matcher.normaliser),
    sets: keptSets(found.table, found.examples, found.nearest, prepared.gestures.length),
  }
  return { takes, uncut, details }
}

function asSeen(prepared: Prepared, view: View): Prepared {
  if (view === 'accelerometer') return withoutGyro(prepared)
  if (view !== 'unaligned') return prepared
  return { ...prepared, settings: { ...prepared.settings, rollAlign: false } }
}
