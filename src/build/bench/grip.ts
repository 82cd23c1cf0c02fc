import type { Core } from '../../shared/core/core'
import { DEMO_SEED, generateDemoLibrary } from '../../shared/demo/demo-library'
import { type GripTolerance, toleranceDeg } from '../../shared/grip/grip-tolerance'
import { measureGrip } from '../../shared/grip/measure-grip'
import { DEFAULT_TRAINING, type FullLibrary } from '../../shared/model/library'
import type { Result } from '../../shared/model/result'
import type { Target } from '../../shared/model/target'
import { importedFacts, samplesFromCounts } from '../datasets/as-recording'
import type { CutSeries } from '../datasets/cut-series'
import { loadUtdMhadWrist } from '../datasets/utd-mhad'
import { type BenchResult, type Figure, rateFigure } from './figure'
import { UTD_TARGET } from './utd'

/** Angles that are printed. */
const ROLLS = [-180, -90, -45, 0, 45, 90, 180]
/** Recall that a grip must keep. */
const LIMIT = 0.9

/** The forearm lies along x: it reads 1 g while the arm hangs. */
const WRIST_TARGET: Target = {
  ...UTD_TARGET,
  name: 'Wrist sensor of UTD-MHAD',
  preset: 'custom',
  longAxis: 'x',
}

/** Recall against grip by turning raw samples: of the demo's physics and of real wrists. */
export async function benchGrip(core: Core): Promise<BenchResult> {
  const demo = await generateDemoLibrary(DEMO_SEED)
  const figures = figuresOf('demo_grip', await measureGrip(core, demo, undefined, { rolls: ROLLS }))
  const loaded = loadUtdMhadWrist(WRIST_TARGET)
  if (!loaded.ok) return { figures, skipped: [loaded.message] }
  const real = libraryOf(loaded.value)
  const options = { rolls: ROLLS, tilts: [], takesPerRound: 60 }
  return {
    figures: [
      ...figures,
      ...figuresOf('utd_mhad_grip', await measureGrip(core, real, undefined, options)),
    ],
    skipped: [],
  }
}

function figuresOf(name: string, measured: Result<GripTolerance>): Figure[] {
  if (!measured.ok) throw new Error(measured.message)
  const { remedies, holdout, rounds } = measured.value
  const note = `${rounds} rounds, ${holdout} held out, raw samples turned`
  return remedies.flatMap(({ remedy, roll, rollUnknown }): Figure[] => [
    ...roll.map(({ angleDeg, recall }) =>
      rateFigure(`${name}_${remedy}_${angleDeg}_recall`, recall, note),
    ),
    {
      figure: `${name}_${remedy}_reach`,
      value: toleranceDeg(roll, LIMIT),
      unit: 'deg',
      note: `recall at least ${LIMIT}`,
    },
    ...(rollUnknown === null ? [] : [rateFigure(`${name}_roll_unknown`, rollUnknown, note)]),
  ])
}

/** Actions of one hand that end in rest, as takes of a library. */
const ACTIONS = ['a01', 'a02', 'a05', 'a06', 'a09', 'a12', 'a14', 'a15']

function libraryOf(series: readonly CutSeries[]): FullLibrary {
  const used = series.filter(({ label }) => ACTIONS.includes(label))
  return {
    library: {
      id: 'utd',
      name: 'UTD-MHAD wrist',
      createdAt: '2015-01-01T00:00:00Z',
      generated: false,
      gestures: ACTIONS.map((id) => ({ id, name: id, note: '' })),
      target: WRIST_TARGET,
      training: { ...DEFAULT_TRAINING },
    },
    recordings: used.map((one, index) => {
      const samples = samplesFromCounts(one.counts, WRIST_TARGET)
      const facts = importedFacts(`utd-${index}`, 'utd', one.tester, samples)
      return { samples, recording: { ...facts, kind: 'take', gestureId: one.label, trim: null } }
    }),
  }
}
