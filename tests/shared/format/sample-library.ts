import type { Background, FullLibrary, Take } from '../../../src/shared/model/library'
import { DEFAULT_TRAINING } from '../../../src/shared/model/library'
import type { SampleBlock } from '../../../src/shared/model/sample'
import type { Target } from '../../../src/shared/model/target'

export const TARGET: Target = {
  name: 'Lantern board',
  preset: 'custom',
  accel: { fullScale: 4, nanoPerLsb: 122_000 },
  gyro: { fullScale: 500, nanoPerLsb: 17_500_000 },
  rateHz: 104,
  mounting: [0, 1, 0, -1, 0, 0, 0, 0, 1],
  longAxis: 'x',
  clockHz: 16_000_000,
  flashBytes: 131_072,
  ramBytes: 16_384,
  modelBudgetBytes: 16_384,
}

/** A block whose values are awkward as text: subnormal, signed zero, extremes, thirds. */
export function awkwardBlock(count: number): SampleBlock {
  const awkward = [0, -0, 9.80665, 1e-45, -3.4028234663852886e38, 1 / 3, 0.1, 123456.789]
  const block = { tMs: new Float64Array(count), values: new Float32Array(count * 6) }
  for (let n = 0; n < count; n++) {
    block.tMs[n] = (n * 1000) / 60
    for (let axis = 0; axis < 6; axis++) {
      block.values[n * 6 + axis] = awkward[(n * 6 + axis) % awkward.length] ?? 0
    }
  }
  return block
}

const device = {
  label: 'test bench, "left" phone',
  rateHz: 60,
  accelStepMps2: 0.1,
  gyroStepDps: 0.1,
  accelSign: 1,
  hasGyro: true,
} as const

export function take(id: string, gestureId: string, testerCode: string, sampleCount = 5): Take {
  return {
    kind: 'take',
    id,
    libraryId: 'parade',
    gestureId,
    testerCode,
    hand: 'right',
    source: 'phone',
    recordedAt: '2026-11-25T11:04:44.500Z',
    device,
    sampleCount,
    durationMs: 66.67,
    gaps: [{ startMs: 10, endMs: 20 }],
    note: 'first, with gloves\n',
    deletedAt: null,
    trim: { startMs: 0, endMs: 50 },
  }
}

export function sampleLibrary(): FullLibrary {
  const { trim: _, gestureId: __, ...facts } = take('b1', 'raise', 'A1', 7)
  const background: Background = { ...facts, kind: 'background' }
  const takes = [take('t1', 'raise', 'A1'), take('t2', 'raise', 'A1'), take('t3', 'ring', 'B 2')]
  return {
    library: {
      id: 'parade',
      name: 'Night parade',
      createdAt: '2026-11-25T11:00:00Z',
      generated: false,
      gestures: [
        { id: 'raise', name: 'Raise', note: '' },
        { id: 'ring', name: 'Ring, twice', note: 'like a bell' },
      ],
      target: TARGET,
      training: { ...DEFAULT_TRAINING },
    },
    recordings: [
      ...takes.map((recording) => ({ recording, samples: awkwardBlock(5) })),
      { recording: background, samples: awkwardBlock(7) },
    ],
  }
}
