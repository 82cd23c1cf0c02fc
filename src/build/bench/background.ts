import type { Core } from '../../shared/core/core'
import { evaluateLibrary } from '../../shared/evaluation/evaluate-library'
import {
  DEFAULT_TRAINING,
  type FullLibrary,
  type RecordingWithSamples,
} from '../../shared/model/library'
import { importedFacts, samplesFromCounts } from '../datasets/as-recording'
import type { CutSeries } from '../datasets/cut-series'
import { type DailyRecording, loadDailyRecordings } from '../datasets/sp-sw-har'
import { loadUtdMhadWrist } from '../datasets/utd-mhad'
import { type BenchResult, rateFigure } from './figure'
import { STROKES, UTD_TARGET } from './utd'

const LIBRARY_ID = 'bench'
/** The shape that every search of this bench starts from; set before anything was measured. */
const THOROUGH = { ...DEFAULT_TRAINING, length: 32, bandShare: 0.1, templatesPerGesture: 8 }

/**
 * Activations in daily movements while eight strokes are awaited: whole stream, cutting included,
 * subjects held out, and no background counted by a model that was trained with it.
 */
export async function backgroundFigures(core: Core): Promise<BenchResult> {
  const takes = loadUtdMhadWrist(UTD_TARGET)
  if (!takes.ok) return { figures: [], skipped: [takes.message] }
  const daily = loadDailyRecordings()
  if (!daily.ok) return { figures: [], skipped: [daily.message] }
  const strokes = takes.value.filter(({ label }) => STROKES.includes(label))
  const full = libraryOf(strokes, daily.value)
  const evaluation = await evaluateLibrary(core, full, 'tester', undefined, { matcher: 'auto' })
  if (!evaluation.ok) return { figures: [], skipped: [evaluation.message] }
  const { accuracy, background } = evaluation.value
  const figures = [
    rateFigure('background_recall', accuracy, '8 hand strokes cut from the stream, rejects count'),
  ]
  if (background === null) return { figures, skipped: [] }
  const { perHour, low, high, hours, activations, segments } = background
  const note = `${activations} activations of ${segments} movements in ${hours.toFixed(2)} h of walking, turning, sitting and standing, watch and phone`
  const figure = 'background_false_per_hour'
  return {
    figures: [...figures, { figure, value: perHour, unit: '1/h', low, high, note }],
    skipped: [],
  }
}

function libraryOf(strokes: readonly CutSeries[], daily: readonly DailyRecording[]): FullLibrary {
  const recordings: RecordingWithSamples[] = [
    ...strokes.map(({ label, tester, counts }, i): RecordingWithSamples => {
      const samples = samplesFromCounts(counts, UTD_TARGET)
      const facts = importedFacts(`take ${i}`, LIBRARY_ID, tester, samples)
      return { recording: { ...facts, kind: 'take', gestureId: label, trim: null }, samples }
    }),
    ...daily.map(({ subject, where, samples }, i): RecordingWithSamples => {
      const facts = importedFacts(`background ${i}`, LIBRARY_ID, `${where} ${subject}`, samples)
      return { recording: { ...facts, kind: 'background' }, samples }
    }),
  ]
  return {
    library: {
      id: LIBRARY_ID,
      name: LIBRARY_ID,
      createdAt: '2026-01-01T00:00:00Z',
      generated: false,
      gestures: STROKES.map((id) => ({ id, name: id, note: '' })),
      target: { ...UTD_TARGET, modelBudgetBytes: 16384 },
      training: THOROUGH,
    },
    recordings,
  }
}
