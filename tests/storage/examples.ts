import {
  type Background,
  DEFAULT_TRAINING,
  type DeviceFacts,
  type Library,
  type Take,
} from '../../src/shared/model/library'
import { AXES, type SampleBlock } from '../../src/shared/model/sample'

export const DEVICE: DeviceFacts = {
  label: 'test',
  rateHz: 60,
  accelStepMps2: 0.1,
  gyroStepDps: 0.1,
  accelSign: 1,
  hasGyro: true,
}

export function exampleLibrary(change: Partial<Library> = {}): Library {
  return {
    id: 'parade',
    name: 'Night parade',
    createdAt: '2026-03-01T18:00:00.000Z',
    generated: false,
    gestures: [{ id: 'raise', name: 'Raise', note: '' }],
    target: {
      name: 'Lantern board',
      preset: 'custom',
      accel: { fullScale: 4, nanoPerLsb: 122_000 },
      gyro: { fullScale: 1000, nanoPerLsb: 35_000_000 },
      rateHz: 104,
      mounting: [1, 0, 0, 0, 1, 0, 0, 0, 1],
      longAxis: 'y',
      clockHz: 48_000_000,
      flashBytes: 262_144,
      ramBytes: 32_768,
      modelBudgetBytes: 16_384,
    },
    training: DEFAULT_TRAINING,
    ...change,
  }
}

export function exampleTake(change: Partial<Take> = {}): Take {
  return {
    kind: 'take',
    id: 'take-1',
    libraryId: 'parade',
    gestureId: 'raise',
    testerCode: 'A',
    hand: 'right',
    source: 'phone',
    recordedAt: '2026-03-01T18:05:00.000Z',
    device: DEVICE,
    sampleCount: 0,
    durationMs: 0,
    gaps: [],
    note: '',
    deletedAt: null,
    trim: null,
    ...change,
  }
}

export function exampleBackground(change: Partial<Background> = {}): Background {
  const { gestureId: _gesture, trim: _trim, kind: _kind, ...facts } = exampleTake()
  return { ...facts, id: 'background-1', ...change, kind: 'background' }
}

/** `count` samples at 60 Hz from a time on; every value tells its row and axis. */
export function exampleSamples(count: number, firstRow = 0): SampleBlock {
  return {
    tMs: Float64Array.from({ length: count }, (_, i) => ((firstRow + i) * 1000) / 60),
    values: Float32Array.from(
      { length: count * AXES },
      (_, i) => firstRow + Math.floor(i / AXES) + (i % AXES) / 8,
    ),
  }
}
