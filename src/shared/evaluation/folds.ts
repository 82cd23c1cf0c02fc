import type { Holdout } from '../model/evaluation'
import { fail, ok, type Result } from '../model/result'
import type { Prepared, PreparedTake } from '../training/prepare'
import { MEASURE_TROUBLE } from '../words/en/measure-trouble'
import { splitBackground } from './background-parts'
import { groupByTake, groupByTester } from './groups'

/** One round: a model is learned from `train` and meets `test` for the first time. */
export interface Fold {
  /** Who or what is held out, for people. */
  heldOut: string
  train: Prepared
  test: Prepared
}

export interface FoldPlan {
  folds: Fold[]
  skipped: { takeId: string; reason: string }[]
}

/**
 * Plans the rounds. With testers held out, nothing of a tester, takes or background, is in both
 * halves of a round. With takes held out, a tester's other takes may be in training: that answers
 * how the prop does for people it knows.
 * Codes: 'evaluate/no-takes', 'evaluate/one-tester', 'evaluate/few-takes'.
 */
export function planFolds(prepared: Prepared, holdout: Holdout, seed: number): Result<FoldPlan> {
  if (prepared.takes.length === 0) {
    return fail('evaluate/no-takes', MEASURE_TROUBLE.noTakes)
  }
  const groups = holdout === 'tester' ? groupByTester(prepared) : groupByTake(prepared, seed)
  if (groups.length < 2) {
    return holdout === 'tester'
      ? fail('evaluate/one-tester', MEASURE_TROUBLE.oneTester)
      : fail('evaluate/few-takes', MEASURE_TROUBLE.oneTakeEach)
  }
  const backgrounds = splitBackground(prepared, holdout, groups)
  const skipped: FoldPlan['skipped'] = []
  const folds = groups.map((group, index): Fold => {
    const held = new Set(group.takes)
    const training = prepared.takes.filter((take) => !held.has(take))
    const known = new Set(training.map((take) => take.gesture))
    const [testable, hopeless] = partition(group.takes, (take) => known.has(take.gesture))
    for (const { take, gesture } of hopeless) {
      const name = prepared.gestures[gesture]?.name ?? ''
      skipped.push({ takeId: take.id, reason: reasonFor(holdout, name) })
    }
    return {
      heldOut: group.label,
      train: { ...prepared, takes: training, backgrounds: backgrounds[index]!.train },
      test: { ...prepared, takes: testable, backgrounds: backgrounds[index]!.test },
    }
  })
  return ok({ folds, skipped })
}

function reasonFor(holdout: Holdout, gesture: string): string {
  return holdout === 'tester'
    ? MEASURE_TROUBLE.noOtherTester(gesture)
    : MEASURE_TROUBLE.onlyTake(gesture)
}

function partition(
  takes: readonly PreparedTake[],
  test: (take: PreparedTake) => boolean,
): [PreparedTake[], PreparedTake[]] {
  return [takes.filter(test), takes.filter((take) => !test(take))]
}
