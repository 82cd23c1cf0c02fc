import type { Core } from '../../shared/core/core'
import { DEMO_SEED, generateDemoLibrary } from '../../shared/demo/demo-library'
import { evaluateLibrary } from '../../shared/evaluation/evaluate-library'
import { defaultTarget } from '../../shared/target/default-target'
import { loadUea } from '../datasets/uea'
import { backgroundFigures } from './background'
import { trainCut } from './cut-kernel'
import { namedRightly } from './cut-matcher'
import { type BenchResult, type Figure, rateFigure } from './figure'
import { teachFigures } from './teach'
import { templateAlone } from './template-alone'
import { utdFigures } from './utd'

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
  const background = await backgroundFigures(core)
  return {
    figures: [
      ...figures,
      ...background.figures,
      ...(await demoFigures(core)),
      ...(await teachFigures(core)),
    ],
    skipped: [...skipped, ...background.skipped],
  }
}

/** The public sets of cut series alone; those that are absent are named in `skipped`. */
export function publicFigures(core: Core): BenchResult {
  const parts = UEA_FIGURES.map(({ set, figure }) => ueaFigures(core, set, figure))
  parts.push(templateAlone(core), utdFigures(core))
  return {
    figures: parts.flatMap((part) => part.figures),
    skipped: [...new Set(parts.flatMap((part) => part.skipped))],
  }
}

function ueaFigures(core: Core, name: string, figure: string): BenchResult {
  const loaded = loadUea(name)
  if (!loaded.ok) return { figures: [], skipped: [loaded.message] }
  const { train, test, channelMask } = loaded.value
  // The files do not say what a count is, so up and down cannot be told.
  const { model, bytes, says } = trainCut(core, defaultTarget(), train, channelMask, false)
  const accuracy = namedRightly(core, model, test)
  return {
    figures: [
      rateFigure(`${figure}_accuracy`, accuracy, `chosen on training data: ${says}`),
      { figure: `${figure}_model_bytes`, value: bytes.length, unit: 'B' },
    ],
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
