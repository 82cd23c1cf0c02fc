import type { BackgroundCount } from '../evaluation/background-score'
import { type Fold, planFolds } from '../evaluation/folds'
import type { Holdout } from '../model/evaluation'
import type { FullLibrary } from '../model/library'
import { ok } from '../model/result'
import type { PartJob } from '../parts/parts'
import { createRandom } from '../statistics/random'
import { shuffled } from '../statistics/shuffled'
import { type Prepared, type PreparedTake, prepareLibrary } from '../training/prepare'
import { WORK_PROGRESS } from '../words/en/progress-work'
import { measureFold, type TakeAnswer } from './measure-fold'

export interface CurveShared {
  full: FullLibrary
  holdout: Holdout
  seed: number
}

/** One training on a part of what a round has: so many takes of each gesture and tester, or testers. */
export interface CurvePart {
  fold: number
  axis: 'takes' | 'testers' | 'all'
  count: number
  draw: number
}

export interface CurveValue {
  answers: TakeAnswer[]
  background: BackgroundCount
}

export const curvePart: PartJob<CurveShared, CurvePart, CurveValue> = {
  open(core, { full, holdout, seed }) {
    const plan = planFolds(prepareLibrary(full), holdout, 1)
    if (!plan.ok) return plan
    return ok((part, onProgress) => {
      const fold = plan.value.folds[part.fold]!
      onProgress({ done: 0, total: 1, what: words(part, fold) })
      const measured = measureFold(core, { ...fold, train: drawn(fold.train, part, seed) })
      if (!measured.ok) return measured
      const { answers, background } = measured.value
      return ok({ answers, background })
    })
  },
}

function words({ axis, count }: CurvePart, { heldOut }: Fold): string {
  if (axis === 'all') return WORK_PROGRESS.holdingOutAll(heldOut)
  return WORK_PROGRESS.holdingOutSome({ heldOut, count, axis })
}

/**
 * Part of a round's training takes. A draw with more takes or testers holds those of the same draw
 * with fewer, so that points of the curve differ by what was added and not by luck.
 */
export function drawn(
  train: Prepared,
  { axis, count, draw, fold }: CurvePart,
  seed: number,
): Prepared {
  if (axis === 'all') return train
  const random = createRandom(seed * 7919 + draw * 131 + fold)
  const testers = [...new Set(train.takes.map(({ take }) => take.testerCode))].sort()
  if (axis === 'testers') {
    const chosen = new Set(shuffled(testers, random).slice(0, count))
    return { ...train, takes: train.takes.filter(({ take }) => chosen.has(take.testerCode)) }
  }
  const kept = new Set<PreparedTake>()
  for (const gesture of train.gestures.keys()) {
    for (const tester of testers) {
      const own = train.takes.filter(
        (one) => one.gesture === gesture && one.take.testerCode === tester,
      )
      for (const take of shuffled(own, random).slice(0, count)) kept.add(take)
    }
  }
  return { ...train, takes: train.takes.filter((take) => kept.has(take)) }
}
