import type { Core } from '../../shared/core/core'
import { modelByteLength } from '../../shared/format/model-bytes'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import { AXES } from '../../shared/model/sample'
import { median } from '../../shared/statistics/summary'
import { defaultTarget } from '../../shared/target/default-target'
import { type PerSensor, rmsOf } from '../../shared/training/amplitudes'
import { cuttingModel } from '../../shared/training/cutting-model'
import { distancesBetween } from '../../shared/training/examples'
import { type Matcher, warpOf } from '../../shared/training/matcher-search'
import { separationLoss } from '../../shared/training/separation'
import type { CutSeries } from '../datasets/cut-series'
import { loadUea } from '../datasets/uea'
import { examplesOf, labelsOf, namedRightly, thinned } from './cut-matcher'
import { type BenchResult, rateFigure } from './figure'

// What is tried, on training data alone.
const LENGTHS = [16, 32, 48, 64, 80]
const BAND_SHARES = [0.03, 0.06, 0.1, 0.15, 0.25]
const COSTS = [0, 1] as const
const SCALE_MODES = [1, 2, 0] as const
const GAINS: readonly PerSensor[] = [
  [32, 32],
  [32, 16],
  [16, 32],
]
/** A longer segment must lower the loss by more than this share to be worth its bytes. */
const WORTH_ITS_BYTES = 0.05
/** Training examples that are compared with each other in the search, at most. */
const SEARCH_EXAMPLES = 250
/** Most templates of a model, MVW_MAX_TEMPLATES, and a threshold that rejects nothing. */
const MOST_TEMPLATES = 512
const NO_THRESHOLD = 0xfffffffe

interface Tried {
  matcher: Matcher
  loss: number
}

/**
 * Chooses length, band, cost, scale mode and gains by the separation loss on the training series:
 * each left out, with all of its tester where testers are known. First how a segment is scaled, at
 * middling length and band, then the rest.
 */
function chooseMatcher(core: Core, train: readonly CutSeries[], channelMask: number): Matcher {
  const some = thinned(train, SEARCH_EXAMPLES)
  const attempt = (matcher: Matcher): Tried => {
    const examples = examplesOf(core, some, matcher)
    const table = distancesBetween(core, examples, warpOf(matcher))
    return { matcher, loss: separationLoss(table, examples) }
  }
  const scalings = scalingsFor(some, channelMask).map((normaliser) =>
    attempt({ normaliser: { ...normaliser, length: 32 }, band: 3, cost: 0 }),
  )
  const { normaliser } = leastOf(scalings).matcher
  const tried = LENGTHS.flatMap((length) =>
    [...new Set(BAND_SHARES.map((share) => Math.round(share * length)))].flatMap((band) =>
      COSTS.map((cost) => attempt({ normaliser: { ...normaliser, length }, band, cost })),
    ),
  )
  const enough = leastOf(tried).loss * (1 + WORTH_ITS_BYTES)
  const shortest = tried.find(({ loss }) => loss <= enough)?.matcher.normaliser.length
  return leastOf(tried.filter(({ matcher }) => matcher.normaliser.length === shortest)).matcher
}

function leastOf(tried: readonly Tried[]): Tried {
  return tried.reduce((best, each) => (each.loss < best.loss ? each : best))
}

function scalingsFor(train: readonly CutSeries[], channelMask: number) {
  const sizes = train.map(({ counts }) => rmsOf(counts, 0, counts.length / AXES, [true, true]))
  const typical = [median(sizes.map((s) => s[0])), median(sizes.map((s) => s[1]))]
  const gains = channelMask === 0b111 ? GAINS.slice(0, 1) : GAINS
  return SCALE_MODES.flatMap((scaleMode) => {
    // Fixed scale divides by the typical size; the others only keep noise from being blown up.
    const share = scaleMode === 0 ? 1 : 0.02
    const floor = typical.map((size) => Math.max(1, Math.round(share * size))) as PerSensor
    return gains.map(([accel, gyro]) => {
      const gain = [accel, accel, accel, gyro, gyro, gyro]
      return { channelMask, centreMask: channelMask, scaleMode, gain, gravityGain: 32, floor }
    })
  })
}

/** A model that holds every training series as a template, thinned evenly to what a model holds. */
function nearestNeighbourModel(
  core: Core,
  train: readonly CutSeries[],
  matcher: Matcher,
): RecogniserModel {
  const labels = labelsOf(train)
  const examples = examplesOf(core, train, matcher)
  const perGesture = Math.floor(MOST_TEMPLATES / labels.length)
  return {
    ...cuttingModel(defaultTarget(), { normaliser: matcher.normaliser }),
    band: matcher.band,
    cost: matcher.cost,
    gestures: labels.map((label, gesture) => {
      const own = examples.filter((example) => example.gesture === gesture)
      const kept = train.length > MOST_TEMPLATES ? thinned(own, perGesture) : own
      return {
        id: label,
        name: label,
        threshold: NO_THRESHOLD,
        templates: kept.map((example) => example.query),
        templateTakeIds: kept.map((example) => example.id),
      }
    }),
  }
}

function describeMatcher({ normaliser, band, cost }: Matcher): string {
  const scale = ['fixed', 'by sensor', 'by axis'][normaliser.scaleMode]
  return `chosen on training data: length ${normaliser.length}, band ${band}, cost ${cost === 0 ? 'absolute' : 'squared'}, scale ${scale}, gain ${normaliser.gain[0]}:${normaliser.gain[3]}`
}

/**
 * The template matcher alone on UWaveGestureLibrary, every training series a template: what warping
 * comes to without kernel features. Published for dependent warping: 0.903 (Ruiz et al., Data Min.
 * Knowl. Disc. 35, 2021).
 */
export function templateAlone(core: Core): BenchResult {
  const loaded = loadUea('UWaveGestureLibrary')
  if (!loaded.ok) return { figures: [], skipped: [loaded.message] }
  const { train, test, channelMask } = loaded.value
  const matcher = chooseMatcher(core, train, channelMask)
  const model = nearestNeighbourModel(core, train, matcher)
  const accuracy = namedRightly(core, model, test)
  return {
    figures: [
      rateFigure('uea_uwave_template_accuracy', accuracy, describeMatcher(matcher)),
      { figure: 'uea_uwave_template_model_bytes', value: modelByteLength(model), unit: 'B' },
    ],
    skipped: [],
  }
}
