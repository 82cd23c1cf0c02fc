import { signsByTester, type TesterSigns } from '../compare/by-tester'
import { planFolds } from '../evaluation/folds'
import type { Holdout, Rate } from '../model/evaluation'
import type { FullLibrary } from '../model/library'
import { ok, type Result } from '../model/result'
import type { RunParts } from '../parts/part-jobs'
import type { OnProgress } from '../protocol/recogniser'
import { mcnemarExact } from '../statistics/mcnemar'
import { type PairedLoss, pairedLoss } from '../statistics/paired'
import { poissonPerHour } from '../statistics/poisson'
import { wilson } from '../statistics/wilson'
import { prepareInParts } from '../training/prepare-in-parts'
import { WORK_PROGRESS } from '../words/en/progress-work'
import { TAUGHT, type TaughtTakes, type TeachOutcome, type TeachRound } from './teach-part'

/**
 * Held-out recall of the other gestures without the taught one and with it, over the rounds that
 * accepted it: takes of the others would be counted as takes without loss.
 */
export interface TeachCost {
  holdout: Holdout
  rounds: number
  /** Rounds whose model let itself be taught; the others are not counted below. */
  accepted: number
  /** Takes of all gestures but the one whose place is taken. */
  before: Rate
  after: Rate
  loss: PairedLoss
  /** Exact McNemar, two-sided. */
  p: number
  testers: TesterSigns
  /** Gestures that lost takes, most first. */
  losers: { name: string; n: number; before: number; after: number }[]
  /** Takes that were right before and are not any more. */
  lost: { takeId: string; testerCode: string; performed: string; taught: boolean }[]
  /** Where a place is taken: others' takes of that gesture answered with the taught one. */
  place: { name: string; before: Rate; after: Rate } | null
  /** Movements of the background answered with the taught gesture; null without background. */
  background: {
    activations: number
    hours: number
    perHour: number
    low: number
    high: number
  } | null
}

/**
 * What a taught gesture costs the others, by held-out takes: in every round a model is trained without
 * the testers held out, taught with the same takes as on the prop, and asked before and after.
 * Codes: those of planFolds and training.
 */
export async function teachCostInParts(
  run: RunParts,
  full: FullLibrary,
  taught: TaughtTakes,
  onProgress: OnProgress = () => {},
): Promise<Result<TeachCost>> {
  onProgress({ done: 0, total: 1, what: WORK_PROGRESS.conditioning })
  const prepared = await prepareInParts(run, full)
  if (!prepared.ok) return prepared
  const testers = new Set(prepared.value.takes.map(({ take }) => take.testerCode))
  const holdout: Holdout = testers.size > 1 ? 'tester' : 'take'
  const plan = planFolds(prepared.value, holdout, 1)
  if (!plan.ok) return plan
  const shared = { prepared: prepared.value, holdout, taught }
  const rounds = await run('teach', shared, [...plan.value.folds.keys()], onProgress)
  if (!rounds.ok) return rounds
  const names = new Map(full.library.gestures.map(({ id, name }) => [id, name]))
  return ok(sumUp(rounds.value, holdout, taught.gestureId, names, full.library.target.rateHz))
}

function sumUp(
  rounds: readonly TeachRound[],
  holdout: Holdout,
  gestureId: string | null,
  names: ReadonlyMap<string, string>,
  rateHz: number,
): TeachCost {
  const accepted = rounds.filter((round) => round.accepted)
  const all = accepted.flatMap(({ outcomes }) => outcomes)
  const others = all.filter(({ truth }) => truth !== gestureId)
  const own = all.filter(({ truth }) => truth === gestureId)
  const right = ({ truth, before }: TeachOutcome) => before === truth
  const still = ({ truth, after }: TeachOutcome) => after === truth
  const lost = others.filter((one) => right(one) && !still(one))
  const won = others.filter((one) => !right(one) && still(one))
  const name = (id: string) => names.get(id) ?? id
  return {
    holdout,
    rounds: rounds.length,
    accepted: accepted.length,
    before: rateOf(others, right),
    after: rateOf(others, still),
    loss: pairedLoss(lost.length, won.length, others.length),
    p: mcnemarExact(lost.length, won.length),
    testers: signsByTester(
      others.map((one) => {
        return { tester: one.testerCode, first: right(one), second: still(one) }
      }),
    ),
    losers: losersAmong(others, name),
    lost: lost.map(({ takeId, testerCode, truth, after }) => {
      return { takeId, testerCode, performed: name(truth), taught: after === TAUGHT }
    }),
    place:
      gestureId === null
        ? null
        : {
            name: name(gestureId),
            before: rateOf(own, right),
            after: rateOf(own, ({ after }) => after === TAUGHT || after === gestureId),
          },
    background: backgroundOf(accepted, rateHz),
  }
}

function rateOf(outcomes: readonly TeachOutcome[], hit: (one: TeachOutcome) => boolean): Rate {
  return wilson(outcomes.filter(hit).length, outcomes.length)
}

function losersAmong(
  others: readonly TeachOutcome[],
  name: (id: string) => string,
): TeachCost['losers'] {
  return [...new Set(others.map(({ truth }) => truth))]
    .map((id) => {
      const own = others.filter(({ truth }) => truth === id)
      const before = own.filter((one) => one.before === id).length
      const after = own.filter((one) => one.after === id).length
      return { name: name(id), n: own.length, before, after }
    })
    .filter(({ before, after }) => after < before)
    .sort((a, b) => b.before - b.after - (a.before - a.after))
}

function backgroundOf(rounds: readonly TeachRound[], rateHz: number): TeachCost['background'] {
  const samples = rounds.reduce((sum, round) => sum + round.backgroundSamples, 0)
  if (samples === 0) return null
  const activations = rounds.reduce((sum, round) => sum + round.activations, 0)
  const hours = samples / rateHz / 3600
  const { perHour, low, high } = poissonPerHour(activations, hours)
  return { activations, hours, perHour, low, high }
}
