import { findGaps, timingFacts } from '../shared/conditioning/timing'
import type { Background, RecordingWithSamples } from '../shared/model/library'
import { sampleCount } from '../shared/model/sample'
import { DEVICE_LABELS } from '../shared/words/en/device-labels'
import type { Log, LogLabels } from './app'

/** The facts of a log as a recording of a library. Its units and axes were settled by the mapping. */
export function describeLog(
  { fileName, samples, hasGyro, fromBoard = false }: Log,
  { gestureId, testerCode, hand }: LogLabels,
  libraryId: string,
  id: string,
): RecordingWithSamples {
  const count = sampleCount(samples)
  const facts: Background = {
    kind: 'background',
    id,
    libraryId,
    testerCode,
    hand,
    source: fromBoard ? 'board' : 'imported',
    recordedAt: new Date().toISOString(),
    device: {
      label: fromBoard ? DEVICE_LABELS.board : DEVICE_LABELS.csvFile,
      rateHz: timingFacts(samples.tMs).rateHz,
      accelStepMps2: 0,
      gyroStepDps: 0,
      accelSign: 1,
      hasGyro,
    },
    sampleCount: count,
    durationMs: samples.tMs[count - 1] ?? 0,
    gaps: findGaps(samples.tMs),
    note: fileName,
    deletedAt: null,
  }
  if (gestureId === null) return { recording: facts, samples }
  return { recording: { ...facts, kind: 'take', gestureId, trim: null }, samples }
}
