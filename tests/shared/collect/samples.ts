import type { Plan } from '../../../src/shared/collect/plan'
import type { Session } from '../../../src/shared/collect/session'

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
