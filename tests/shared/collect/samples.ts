import type { Plan } from '../../../src/shared/collect/plan'
import type { Session, SessionFile } from '../../../src/shared/collect/session'
import type { SampleBlock } from '../../../src/shared/model/sample'
import { createRandom } from '../../../src/shared/statistics/random'

export const DEVICE = {
  label: 'test bench phone',
  rateHz: 60,
  accelStepMps2: 0.1,
  gyroStepDps: 0.1,
  accelSign: 1,
  hasGyro: true,
} as const

/** Two gestures for the night parade, asked of each tester. */
export function samplePlan(change: Partial<Plan> = {}): Plan {
  return {
    id: 'plan-1',
    libraryId: 'parade',
    title: 'Night parade',
    gestures: [
      {
        gestureId: 'raise',
        name: 'Raise',
        takes: 5,
        words: 'Lift the lantern over your head and let it down again.',
        demonstration: { periodMs: 80, values: [0, 20, 0, 0, 0, 0, 1, 19, 0, 9, -9, 0] },
      },
      { gestureId: 'ring', name: 'Ring', takes: 3, words: '', demonstration: null },
    ],
    order: 'shuffled',
    hand: 'own',
    grip: 'free',
    restEvery: 4,
    restMs: 20_000,
    backgroundMs: 60_000,
    part: { number: 1, of: 1 },
    ...change,
  }
}

export function sampleSession(change: Partial<Session> = {}): Session {
  return {
    id: 'a'.repeat(32),
    planId: 'plan-1',
    libraryId: 'parade',
    title: 'Night parade',
    testerCode: 'K7Q4MXA',
    testerKey: 'b'.repeat(32),
    hand: 'right',
    consentAt: '2026-11-25T18:00:00Z',
    startedAt: '2026-11-25T18:00:20Z',
    endedAt: '2026-11-25T18:09:00Z',
    device: DEVICE,
    gestures: [
      { id: 'raise', name: 'Raise' },
      { id: 'ring', name: 'Ring' },
    ],
    ...change,
  }
}

/** A session of so many takes and one background, samples from a seed. */
export function sampleSessionFile(takes = 4, change: Partial<Session> = {}, seed = 1): SessionFile {
  const session = sampleSession(change)
  const { id, libraryId, testerCode, hand, device } = session
  const random = createRandom(seed)
  const block = (count: number): SampleBlock => ({
    tMs: Float64Array.from({ length: count }, (_, n) => (n * 1000) / 60),
    // Readings of a phone are rounded to a tenth.
    values: Float32Array.from({ length: count * 6 }, () => Math.round(random.normal() * 50) / 10),
  })
  const facts = (n: number, count: number) => ({
    id: `${id.slice(0, 8)}-${n}`,
    libraryId,
    testerCode,
    hand,
    source: 'phone' as const,
    recordedAt: new Date(Date.parse(session.startedAt) + n * 8_000).toISOString(),
    device,
    sampleCount: count,
    durationMs: ((count - 1) * 1000) / 60,
    gaps: [],
    note: '',
    deletedAt: null,
    sessionId: id,
  })
  const performed = Array.from({ length: takes }, (_, n) => ({
    recording: {
      ...facts(n, 90 + n),
      kind: 'take' as const,
      gestureId: session.gestures[n % session.gestures.length]!.id,
      trim: null,
    },
    samples: block(90 + n),
  }))
  const background = { recording: { ...facts(takes, 300), kind: 'background' as const } }
  return { session, recordings: [...performed, { ...background, samples: block(300) }] }
}
