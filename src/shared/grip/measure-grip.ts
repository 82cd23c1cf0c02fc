import type { Core } from '../core/core'
import type { FullLibrary } from '../model/library'
import { ok, type Result } from '../model/result'
import type { RunParts } from '../parts/part-jobs'
import { partsHere } from '../parts/parts-here'
import type { OnProgress } from '../protocol/recogniser'
import { wilson } from '../statistics/wilson'
import { outlineLibrary } from '../training/prepare'
import { type GripRound, type GripShared, planGrip, type Tally } from './grip-part'
import {
  type GripPoint,
  type GripTolerance,
  REMEDIES,
  type Remedy,
  ROLLS_DEG,
  TILTS_DEG,
} from './grip-tolerance'

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

/** `measureGripInParts` on this thread. */
export function measureGrip(
  core: Core,
  full: FullLibrary,
  onProgress: OnProgress = () => {},
  options: GripOptions = {},
): Promise<Result<GripTolerance>> {
  return measureGripInParts(partsHere(core), full, onProgress, options)
}

/**
 * Recall of held-out takes against the grip. Raw samples of each held-out take are turned, conditioned
 * anew and run through the core by models of three kinds; nobody's takes are in both halves of a round.
 * Codes: those of planFolds, trainPrepared and of whoever runs the parts.
 */
export async function measureGripInParts(
  run: RunParts,
  full: FullLibrary,
  onProgress: OnProgress = () => {},
  options: GripOptions = {},
): Promise<Result<GripTolerance>> {
  const testers = new Set(outlineLibrary(full).takes.map(({ take }) => take.testerCode))
  const shared: GripShared = {
    full,
    holdout: testers.size > 1 ? 'tester' : 'take',
    seed: options.seed ?? 1,
    remedies: options.remedies ?? REMEDIES,
    takesPerRound: options.takesPerRound ?? TAKES_PER_ROUND,
    changes: [
      ...(options.rolls ?? ROLLS_DEG).map((rollDeg) => ({ rollDeg, tiltDeg: 0 })),
      ...(options.tilts ?? TILTS_DEG)
        .filter((tiltDeg) => tiltDeg !== 0)
        .map((tiltDeg) => ({ rollDeg: 0, tiltDeg })),
    ],
  }
  const folds = planGrip(shared)
  if (!folds.ok) return folds
  const planned = [...folds.value.keys()].slice(0, options.rounds ?? ROUNDS)
  const rounds = await run('grip', shared, planned, onProgress)
  if (!rounds.ok) return rounds
  return ok({
    ...scored(shared, rounds.value),
    holdout: shared.holdout,
    rounds: rounds.value.length,
  })
}

function scored(
  { remedies, changes }: GripShared,
  rounds: readonly GripRound[],
): Pick<GripTolerance, 'remedies' | 'verticalDeg'> {
  const points = (remedy: number, axis: 'rollDeg' | 'tiltDeg', other: 'rollDeg' | 'tiltDeg') =>
    [...changes.entries()]
      .filter(([, change]) => change[other] === 0)
      .map(([at, change]): GripPoint => {
        const { hits, n } = together(rounds.map(({ tallies }) => tallies[at]![remedy]!))
        return { angleDeg: change[axis], recall: wilson(hits, n) }
      })
      .sort((a, b) => a.angleDeg - b.angleDeg)
  const unknown = together(rounds.map((round) => round.unknown))
  const rollMinPercent = rounds.at(-1)?.rollMinPercent ?? 0
  return {
    verticalDeg: (Math.asin(rollMinPercent / 100) * 180) / Math.PI,
    remedies: remedies.map((remedy, index) => ({
      remedy,
      roll: points(index, 'rollDeg', 'tiltDeg'),
      tilt: points(index, 'tiltDeg', 'rollDeg'),
      tableBytes: meanOf(rounds.map(({ tableBytes }) => tableBytes[index]!)),
      rollUnknown: remedy === 'gravity' ? wilson(unknown.hits, unknown.n) : null,
    })),
  }
}

function together(tallies: readonly Tally[]): Tally {
  return tallies.reduce((sum, { hits, n }) => ({ hits: sum.hits + hits, n: sum.n + n }), {
    hits: 0,
    n: 0,
  })
}

function meanOf(values: readonly number[]): number {
  return Math.round(values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length))
}
