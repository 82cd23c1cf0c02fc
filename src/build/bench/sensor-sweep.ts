import type { Core } from '../../shared/core/core'
import { decideSensor } from '../../shared/decide/decide-sensor'
import type { SensorDecision, SettingResult } from '../../shared/decide/sensor-decision'
import { DEMO_SEED, generateDemoLibrary } from '../../shared/demo/demo-library'
import { DEFAULT_TRAINING, type FullLibrary } from '../../shared/model/library'
import type { Result } from '../../shared/model/result'
import { settingWords } from '../../shared/words/en/setting-words'
import { importedFacts, samplesFromCounts } from '../datasets/as-recording'
import type { CutSeries } from '../datasets/cut-series'
import { loadUtdMhadWrist } from '../datasets/utd-mhad'
import { type BenchResult, type Figure, rateFigure } from './figure'
import { STROKES, UTD_TARGET } from './utd'

/**
 * What cheaper sensors lose, on the hand strokes of UTD-MHAD (recorded at 50 Hz, cut, so that a button
 * stands for the segmenter) and on the demo; testers held out, the same takes for every setting.
 */
export async function benchSensor(core: Core): Promise<BenchResult> {
  const demo = await generateDemoLibrary(DEMO_SEED)
  const figures = figuresOf('sweep_demo', await decideSensor(core, demo))
  const loaded = loadUtdMhadWrist(UTD_TARGET)
  if (!loaded.ok) return { figures, skipped: [loaded.message] }
  const strokes = libraryOf(loaded.value.filter(({ label }) => STROKES.includes(label)))
  return {
    figures: [...figures, ...figuresOf('sweep_utd_mhad', await decideSensor(core, strokes))],
    skipped: [],
  }
}

function figuresOf(name: string, decided: Result<SensorDecision>): Figure[] {
  if (!decided.ok) throw new Error(decided.message)
  const { own, results, together, cheapest, limits, tolerance } = decided.value
  return [
    rateFigure(`${name}_own_accuracy`, own.accuracy, settingWords(own.setting)),
    ...results.map((one) => lossFigure(`${name}_${one.axis}_${changedValue(one)}`, one)),
    ...together.map((one, i) => lossFigure(`${name}_together_${i + 1}`, one)),
    {
      figure: `${name}_cheapest_loss`,
      value: cheapest.loss.value,
      unit: 'share',
      n: cheapest.loss.n,
      low: cheapest.loss.low,
      high: cheapest.loss.high,
      note: `${settingWords(cheapest.setting)}; bounded below ${tolerance}; recorded at ${limits.recordedHz.toFixed(1)} Hz`,
    },
  ]
}

/** The value that was changed, for a figure's name. */
function changedValue({ axis, setting }: SettingResult): number | string {
  switch (axis) {
    case 'rate':
      return setting.rateHz
    case 'bits':
      return setting.bits
    case 'noise':
      return setting.accelNoise
    case 'range':
      return setting.rangeG
    default:
      return 'none'
  }
}

function lossFigure(name: string, { setting, loss, verdict, accuracy }: SettingResult): Figure {
  const note = `${verdict}: ${settingWords(setting)}, ${accuracy.hits} of ${accuracy.n} right`
  const { value, n, low, high } = loss
  return { figure: `${name}_loss`, value, unit: 'share', n, low, high, note }
}

function libraryOf(series: readonly CutSeries[]): FullLibrary {
  return {
    library: {
      id: 'utd',
      name: 'UTD-MHAD strokes',
      createdAt: '2015-01-01T00:00:00Z',
      generated: false,
      gestures: STROKES.map((id) => ({ id, name: id, note: '' })),
      target: { ...UTD_TARGET, preset: 'custom', longAxis: 'x' },
      training: { ...DEFAULT_TRAINING, segmentation: 'button' },
    },
    recordings: series.map((one, index) => {
      const samples = samplesFromCounts(one.counts, UTD_TARGET)
      const facts = importedFacts(`utd-${index}`, 'utd', one.tester, samples)
      return { samples, recording: { ...facts, kind: 'take', gestureId: one.label, trim: null } }
    }),
  }
}
