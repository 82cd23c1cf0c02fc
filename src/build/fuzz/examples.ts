import { contentId } from '../../shared/collect/content-id'
import type { Plan } from '../../shared/collect/plan'
import type { SessionFile } from '../../shared/collect/session'
import type { FullLibrary, RecordingWithSamples, Take } from '../../shared/model/library'
import { DEFAULT_TRAINING } from '../../shared/model/library'
import { AXES, type SampleBlock } from '../../shared/model/sample'
import { defaultTarget } from '../../shared/target/default-target'

// Small on purpose: a hundred thousand altered copies are read.

const SAMPLES = 6
const AT = '2026-11-25T20:00:00Z'
const DEVICE = {
  label: 'phone',
  rateHz: 60,
  accelStepMps2: 0.1,
  gyroStepDps: 0.1,
  accelSign: 1,
  hasGyro: true,
} as const

function block(seed: number): SampleBlock {
  return {
    tMs: Float64Array.from({ length: SAMPLES }, (_, i) => (i * 1000) / 60),
    values: Float32Array.from({ length: SAMPLES * AXES }, (_, i) => ((i * 7 + seed) % 23) / 3 - 4),
  }
}

function take(id: string, gestureId: string, seed: number): RecordingWithSamples<Take> {
  const samples = block(seed)
  const recording: Take = {
    kind: 'take',
    id,
    libraryId: 'parade',
    gestureId,
    testerCode: 'T01',
    hand: 'right',
    source: 'phone',
    recordedAt: AT,
    device: DEVICE,
    sampleCount: SAMPLES,
    durationMs: samples.tMs[SAMPLES - 1] ?? 0,
    gaps: [],
    note: 'by the bridge',
    deletedAt: null,
    trim: { startMs: 10, endMs: 60 },
  }
  return { recording, samples }
}

/** Two gestures, two takes and a background. */
export function exampleLibrary(): FullLibrary {
  const { recording, samples } = take('background', 'ring', 5)
  const { gestureId, trim, ...facts } = recording
  return {
    library: {
      id: 'parade',
      name: 'Night parade',
      createdAt: AT,
      generated: false,
      gestures: [
        { id: 'ring', name: 'Ring', note: 'twice' },
        { id: 'sweep', name: 'Sweep', note: '' },
      ],
      target: defaultTarget(),
      training: DEFAULT_TRAINING,
    },
    recordings: [
      take('one', 'ring', 1),
      take('two', 'sweep', 2),
      { recording: { ...facts, kind: 'background' }, samples },
    ],
  }
}

export function exampleSession(): SessionFile {
  const id = '0123456789abcdef0123456789abcdef'
  const recordings = exampleLibrary().recordings.map(({ recording, samples }) => ({
    recording: { ...recording, sessionId: id, contentId: contentId(samples) },
    samples,
  }))
  return {
    session: {
      id,
      planId: 'plan',
      libraryId: 'parade',
      title: 'Night parade',
      testerCode: 'T01',
      testerKey: 'fedcba9876543210fedcba9876543210',
      hand: 'right',
      consentAt: AT,
      startedAt: AT,
      endedAt: '2026-11-25T20:10:00Z',
      device: DEVICE,
      gestures: [
        { id: 'ring', name: 'Ring' },
        { id: 'sweep', name: 'Sweep' },
      ],
    },
    recordings,
  }
}

export function examplePlan(): Plan {
  return {
    id: 'plan',
    libraryId: 'parade',
    title: 'Night parade',
    gestures: [
      {
        gestureId: 'ring',
        name: 'Ring',
        takes: 6,
        words: 'As a bell, twice.',
        demonstration: { periodMs: 50, values: [0, 0, 20, 1, 2, 3, 0, 1, 19, -4, 5, 6] },
      },
      { gestureId: 'sweep', name: 'Sweep', takes: 6, words: '', demonstration: null },
    ],
    order: 'shuffled',
    hand: 'own',
    grip: 'free',
    restEvery: 10,
    restMs: 20_000,
    backgroundMs: 120_000,
    part: { number: 1, of: 1 },
  }
}
