import type { BackgroundScore, Evaluation, Holdout, Rate, TakeOutcome } from '../model/evaluation'
import { fail, ok, type Result } from '../model/result'
import { mcnemarExact } from '../statistics/mcnemar'
import { type PairedLoss, pairedLoss } from '../statistics/paired'
import { wilson } from '../statistics/wilson'
import { MEASURE_TROUBLE } from '../words/en/measure-trouble'
import { signsByTester, type TesterSigns } from './by-tester'

/** An evaluation, and which takes the library had then. */
export interface Measured {
  evaluation: Evaluation
  /** Null when that is not known. */
  takeIds: ReadonlySet<string> | null
}

/** A take whose answer was right in one evaluation and wrong in the other. */
export interface Flip {
  takeId: string
  testerCode: string
  /** Name of the performed gesture. */
  performed: string
  /** What each answered: a name, or null for none. */
  first: string | null
  second: string | null
  /** Whether the second is right. */
  better: boolean
}

/** Takes that cannot be compared, as one evaluation did not hold them out. */
export interface NotCompared {
  /** Came to the library after the one evaluation, or were taken out before the other. */
  onlyInFirst: number
  onlyInSecond: number
  /** In both libraries, but trained on and never held out in one of them. */
  trainedOn: number
  /** Held out in both as performances of different gestures. */
  relabelled: number
}

/** Two evaluations on the takes that both held out. */
export interface Comparison {
  holdout: Holdout
  first: Rate
  second: Rate
  bothRight: number
  bothWrong: number
  onlyFirst: number
  onlySecond: number
  /** Share of these takes lost by going from the first to the second, with its interval over takes. */
  loss: PairedLoss
  /** Exact McNemar, two-sided. */
  p: number
  testers: TesterSigns
  /** Newly wrong ones first, then by gesture and tester. */
  flips: Flip[]
  notCompared: NotCompared
  /** Gestures that only one of the two knew, by name. */
  gesturesOnlyFirst: string[]
  gesturesOnlySecond: string[]
  /** False activations of each, null without background. */
  backgrounds: [BackgroundScore | null, BackgroundScore | null]
}

/**
 * Which takes two recognisers answered differently, each asked only what it had not met: of either
 * evaluation the held-out answer counts, and only takes that both held out are compared.
 * Codes: 'compare/holdout' when testers were held out in one and takes in the other,
 * 'compare/no-takes' when no take is in both.
 */
export function compareEvaluations(first: Measured, second: Measured): Result<Comparison> {
  const { holdout } = first.evaluation
  if (holdout !== second.evaluation.holdout) {
    return fail('compare/holdout', MEASURE_TROUBLE.otherHoldout)
  }
  const pairs = pairUp(first.evaluation, second.evaluation)
  if (pairs.same.length === 0) {
    return fail('compare/no-takes', MEASURE_TROUBLE.noneInBoth)
  }
  const right = pairs.same.map(([a, b]) => [isRight(a), isRight(b)] as const)
  const count = (x: boolean, y: boolean) => right.filter(([a, b]) => a === x && b === y).length
  const [onlyFirst, onlySecond] = [count(true, false), count(false, true)]
  const bothRight = count(true, true)
  const n = pairs.same.length
  const idsOf = ({ gestures }: Evaluation) => new Set(gestures.map(({ id }) => id))
  const unknownTo = (own: Evaluation, other: Evaluation) =>
    own.gestures.filter(({ id }) => !idsOf(other).has(id)).map(({ name }) => name)
  return ok({
    holdout,
    first: wilson(bothRight + onlyFirst, n),
    second: wilson(bothRight + onlySecond, n),
    bothRight,
    bothWrong: count(false, false),
    onlyFirst,
    onlySecond,
    loss: pairedLoss(onlyFirst, onlySecond, n),
    p: mcnemarExact(onlyFirst, onlySecond),
    testers: signsByTester(
      pairs.same.map(([a, b]) => {
        return { tester: b.testerCode, first: isRight(a), second: isRight(b) }
      }),
    ),
    flips: flipsOf(pairs.same, first.evaluation, second.evaluation),
    notCompared: notCompared(first, second, pairs),
    gesturesOnlyFirst: unknownTo(first.evaluation, second.evaluation),
    gesturesOnlySecond: unknownTo(second.evaluation, first.evaluation),
    backgrounds: [first.evaluation.background, second.evaluation.background],
  })
}

interface Pairs {
  /** Held out in both as the same gesture. */
  same: [TakeOutcome, TakeOutcome][]
  relabelled: number
  onlyFirst: TakeOutcome[]
  onlySecond: TakeOutcome[]
}

function pairUp(a: Evaluation, b: Evaluation): Pairs {
  const inSecond = new Map(b.outcomes.map((outcome) => [outcome.takeId, outcome]))
  const inFirst = new Set(a.outcomes.map(({ takeId }) => takeId))
  const both = a.outcomes.flatMap((own): [TakeOutcome, TakeOutcome][] => {
    const other = inSecond.get(own.takeId)
    return other === undefined ? [] : [[own, other]]
  })
  const same = both.filter(
    ([own, other]) => a.gestures[own.truth]?.id === b.gestures[other.truth]?.id,
  )
  return {
    same,
    relabelled: both.length - same.length,
    onlyFirst: a.outcomes.filter(({ takeId }) => !inSecond.has(takeId)),
    onlySecond: b.outcomes.filter(({ takeId }) => !inFirst.has(takeId)),
  }
}

function notCompared(first: Measured, second: Measured, pairs: Pairs): NotCompared {
  const wasThere = (outcome: TakeOutcome, other: Measured) =>
    other.takeIds?.has(outcome.takeId) ?? false
  const trainedInSecond = pairs.onlyFirst.filter((outcome) => wasThere(outcome, second)).length
  const trainedInFirst = pairs.onlySecond.filter((outcome) => wasThere(outcome, first)).length
  return {
    onlyInFirst: pairs.onlyFirst.length - trainedInSecond,
    onlyInSecond: pairs.onlySecond.length - trainedInFirst,
    trainedOn: trainedInFirst + trainedInSecond,
    relabelled: pairs.relabelled,
  }
}

function isRight({ answer, truth }: TakeOutcome): boolean {
  return answer === truth
}

function flipsOf(same: Pairs['same'], a: Evaluation, b: Evaluation): Flip[] {
  const nameOf = ({ gestures }: Evaluation, index: number | null) =>
    index === null ? null : (gestures[index]?.name ?? '')
  const key = (flip: Flip) => `${flip.better ? 1 : 0} ${flip.performed} ${flip.testerCode}`
  return same
    .filter(([own, other]) => isRight(own) !== isRight(other))
    .map(([own, other]) => ({
      takeId: own.takeId,
      testerCode: own.testerCode,
      performed: nameOf(b, other.truth) ?? '',
      first: nameOf(a, own.answer),
      second: nameOf(b, other.answer),
      better: isRight(other),
    }))
    .sort((x, y) => (key(x) < key(y) ? -1 : 1))
}
