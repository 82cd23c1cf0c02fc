import type { Background, FullLibrary, Take } from '../../../src/shared/model/library'
import { DEFAULT_TRAINING } from '../../../src/shared/model/library'
import { AXES, type SampleBlock, STANDARD_GRAVITY_MPS2 } from '../../../src/shared/model/sample'
import { createRandom, type Random } from '../../../src/shared/statistics/random'
import { defaultTarget } from '../../../src/shared/target/default-target'

const RATE_HZ = 60
const REST_S = 0.8

/** Movements so simple that their truth is beyond doubt: a turn about one axis, once or twice. */
export const TINY_GESTURES = [
  { id: 'nod', name: 'Nod', axis: 3, turns: 1 },
  { id: 'shake', name: 'Shake', axis: 5, turns: 2 },
  { id: 'roll', name: 'Roll', axis: 4, turns: 1 },
] as const

export interface Burst {
  axis: number
  turns: number
  /** Peak rate of turning, deg/s. */
  sizeDps: number
  durationS: number
}

export interface TinyOptions {
  seed?: number
  testers?: number
  takesEach?: number
  /** Seconds of background with turns about two axes at once, of the first tester. */
  backgroundS?: number
}

/** Rest, the bursts with half a second between them, rest. */
export function samplesOf(bursts: readonly Burst[], random: Random): SampleBlock {
  const values: number[] = []
  const rest = (seconds: number) => {
    for (let i = 0; i < seconds * RATE_HZ; i++) values.push(...reading(random, 0, 0, 0))
  }
  rest(REST_S)
  for (const { axis, turns, sizeDps, durationS } of bursts) {
    const count = Math.round(durationS * RATE_HZ)
    for (let i = 0; i < count; i++) {
      const phase = i / count
      const rate = sizeDps * Math.sin(2 * Math.PI * turns * phase) * Math.sin(Math.PI * phase)
      values.push(...reading(random, axis, rate, phase))
    }
    rest(REST_S)
  }
  const count = values.length / AXES
  return {
    tMs: Float64Array.from({ length: count }, (_, i) => (1000 * i) / RATE_HZ),
    values: Float32Array.from(values),
  }
}

function reading(random: Random, axis: number, rateDps: number, phase: number): number[] {
  const noise = [0.03, 0.03, 0.03, 0.3, 0.3, 0.3].map((sd) => sd * random.normal())
  noise[2] = (noise[2] ?? 0) + STANDARD_GRAVITY_MPS2
  if (axis >= 3) {
    noise[axis] = (noise[axis] ?? 0) + rateDps
    // The sensor sits away from the axis of the turn and feels it.
    noise[(axis + 1) % 3] = (noise[(axis + 1) % 3] ?? 0) + rateDps * 0.01 * Math.cos(6 * phase)
  }
  return noise
}

const FACTS = {
  libraryId: 'tiny',
  hand: 'unknown',
  source: 'generated',
  recordedAt: '2025-01-01T00:00:00Z',
  device: {
    label: '',
    rateHz: RATE_HZ,
    accelStepMps2: 0,
    gyroStepDps: 0,
    accelSign: 1,
    hasGyro: true,
  },
  gaps: [],
  note: '',
  deletedAt: null,
} as const

export function takeOf(id: string, gestureId: string, testerCode: string, samples: SampleBlock) {
  const sampleCount = samples.tMs.length
  const durationMs = samples.tMs[sampleCount - 1] ?? 0
  const recording: Take = {
    ...FACTS,
    gaps: [],
    id,
    kind: 'take',
    gestureId,
    testerCode,
    trim: null,
    sampleCount,
    durationMs,
  }
  return { recording, samples }
}

export function backgroundOf(id: string, testerCode: string, samples: SampleBlock) {
  const { gestureId: _, trim: __, ...facts } = takeOf(id, '', testerCode, samples).recording
  const recording: Background = { ...facts, kind: 'background' }
  return { recording, samples }
}

export function tinyLibrary(options: TinyOptions = {}): FullLibrary {
  const { seed = 1, testers = 3, takesEach = 4, backgroundS = 0 } = options
  const random = createRandom(seed)
  const recordings: FullLibrary['recordings'] = []
  for (let t = 0; t < testers; t++) {
    const pace = random.uniform(0.85, 1.2)
    for (const { id, axis, turns } of TINY_GESTURES) {
      for (let k = 0; k < takesEach; k++) {
        const burst = {
          axis,
          turns,
          sizeDps: 250 * random.uniform(0.8, 1.25),
          durationS: pace * random.uniform(0.9, 1.1),
        }
        recordings.push(takeOf(`${id}-T${t}-${k}`, id, `T${t}`, samplesOf([burst], random)))
      }
    }
  }
  if (backgroundS > 0)
    recordings.push(backgroundOf('background', 'T0', restless(backgroundS, random)))
  return {
    library: {
      id: 'tiny',
      name: 'Tiny',
      createdAt: '2025-01-01T00:00:00Z',
      generated: true,
      gestures: TINY_GESTURES.map(({ id, name }) => ({ id, name, note: '' })),
      target: defaultTarget(),
      training: { ...DEFAULT_TRAINING },
    },
    recordings,
  }
}

/** Many quick turns to and fro: movements that are no gesture. */
function restless(seconds: number, random: Random): SampleBlock {
  const bursts = Array.from({ length: Math.ceil(seconds / 1.5) }, () => ({
    axis: 3 + random.integer(3),
    turns: 5,
    sizeDps: random.uniform(80, 200),
    durationS: random.uniform(0.5, 0.9),
  }))
  return samplesOf(bursts, random)
}
