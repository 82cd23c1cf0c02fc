import type { Core } from '../../shared/core/core'
import { DEMO_SEED, generateDemoLibrary } from '../../shared/demo/demo-library'
import { evaluateLibrary } from '../../shared/evaluation/evaluate-library'
import { modelByteLength } from '../../shared/format/model-bytes'
import { wilson } from '../../shared/statistics/wilson'
import { loadUea } from '../datasets/uea'
import { loadUtdMhadWrist } from '../datasets/utd-mhad'
import {
  chooseCutMatcher,
  describeMatcher,
  namedRightly,
  nearestNeighbourModel,
} from './cut-matcher'
import { type BenchResult, type Figure, rateFigure } from './figure'

/** Ranges of the sensor that UTD-MHAD was recorded with, as counts of a 16-bit reading. */
const UTD_RANGES = {
  accel: { fullScale: 8, nanoPerLsb: Math.round((8 * 1e9) / 32768) },
  gyro: { fullScale: 1000, nanoPerLsb: Math.round((1000 * 1e9) / 32768) },
}

const UEA_FIGURES = [
  { set: 'UWaveGestureLibrary', figure: 'uea_uwave' },
  { set: 'BasicMotions', figure: 'uea_basicmotions' },
  { set: 'RacketSports', figure: 'uea_racketsports' },
]

/**
 * Accuracy on public data sets, which come cut and go straight to the matcher, and on the demo, which
 * goes through everything. No test series is looked at before the settings stand.
 */
export async function benchAccuracy(core: Core): Promise<BenchResult> {
  const { figures, skipped } = publicFigures(core)
  return { figures: [...figures, ...(await demoFigures(core))], skipped }
}

/** The public sets alone; those that are absent are named in `skipped`. */
export function publicFigures(core: Core): BenchResult {
  const parts = UEA_FIGURES.map(({ set, figure }) => ueaFigures(core, set, figure))
  parts.push(utdFigures(core))
  return {
    figures: parts.flatMap((part) => part.figures),
    skipped: parts.flatMap((part) => part.skipped),
  }
}

function ueaFigures(core: Core, name: string, figure: string): BenchResult {
  const loaded = loadUea(name)
  if (!loaded.ok) return { figures: [], skipped: [loaded.message] }
  const { train, test, channelMask } = loaded.value
  const matcher = chooseCutMatcher(core, train, channelMask)
  const model = nearestNeighbourModel(core, train, matcher)
  const accuracy = namedRightly(core, model, test)
  return {
    figures: [
      rateFigure(`${figure}_accuracy`, accuracy, describeMatcher(matcher)),
      { figure: `${figure}_model_bytes`, value: modelByteLength(model), unit: 'B' },
    ],
    skipped: [],
  }
}

/** One of eight subjects held out in turn; settings are chosen again on the other seven. */
function utdFigures(core: Core): BenchResult {
  const loaded = loadUtdMhadWrist(UTD_RANGES)
  if (!loaded.ok) return { figures: [], skipped: [loaded.message] }
  const subjects = [...new Set(loaded.value.map(({ tester }) => tester))].sort()
  let [hits, n] = [0, 0]
  for (const subject of subjects) {
    const train = loaded.value.filter(({ tester }) => tester !== subject)
    const test = loaded.value.filter(({ tester }) => tester === subject)
    const matcher = chooseCutMatcher(core, train, 0b111111)
    const rate = namedRightly(core, nearestNeighbourModel(core, train, matcher), test)
    hits += rate.hits
    n += rate.n
  }
  const note = `21 actions, one of ${subjects.length} subjects held out in turn, settings chosen on the others`
  return {
    figures: [rateFigure('utd_mhad_wrist_louo_accuracy', wilson(hits, n), note)],
    skipped: [],
  }
}

async function demoFigures(core: Core): Promise<Figure[]> {
  const evaluation = await evaluateLibrary(core, await generateDemoLibrary(DEMO_SEED), 'tester')
  if (!evaluation.ok) throw new Error(evaluation.message)
  const { accuracy, rejected, background } = evaluation.value
  const figures = [
    rateFigure('demo_louo_accuracy', accuracy, 'generated data, testers held out, whole stream'),
    rateFigure('demo_louo_rejected', rejected),
  ]
  if (background === null) return figures
  const { perHour, low, high, hours, activations } = background
  const note = `${activations} in ${(hours * 60).toFixed(1)} min of generated background`
  const figure = 'demo_false_activations_per_hour'
  return [...figures, { figure, value: perHour, unit: '1/h', low, high, note }]
}
