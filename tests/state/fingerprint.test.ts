import { describe, expect, test } from 'vitest'
import {
  DEFAULT_TRAINING,
  type Library,
  type TrainingSettings,
} from '../../src/shared/model/library'
import type { Target } from '../../src/shared/model/target'
import { defaultTarget } from '../../src/shared/target/default-target'
import { evaluationFingerprint, fingerprint } from '../../src/state/fingerprint'

const library: Library = {
  id: 'l',
  name: 'Lanterns',
  createdAt: '2026-01-01T00:00:00.000Z',
  generated: false,
  gestures: [{ id: 'g', name: 'Raise', note: '' }],
  target: defaultTarget(),
  training: { ...DEFAULT_TRAINING },
}

const withTarget = (change: Partial<Target>): string =>
  fingerprint({ ...library, target: { ...library.target, ...change } }, [])

describe('a model and its measurement', () => {
  test.each([
    { name: 'Another board' },
    { clockHz: 16_000_000 },
    { flashBytes: 65_536 },
    { calibration: { zero: [1, 0, 0, 0, 0, 0], correctionQ14: [] } },
  ])('stay fresh when only this changes: %o', (change) => {
    expect(withTarget(change)).toBe(fingerprint(library, []))
  })

  test.each([
    { rateHz: 104 },
    { longAxis: 'x' as const },
    { ramBytes: 4096 },
    { modelBudgetBytes: 2048 },
    { gyro: { fullScale: 500, nanoPerLsb: 17_500_000 } },
  ])('are stale once this changes: %o', (change) => {
    expect(withTarget(change)).not.toBe(fingerprint(library, []))
  })
})

describe('the threshold factor', () => {
  const withTraining = (training: Partial<TrainingSettings>): Library => {
    return { ...library, training: { ...library.training, ...training } }
  }

  test('makes a model stale but not a measurement, which knows all factors', () => {
    const changed = withTraining({ thresholdFactor: 0.8 })
    expect(fingerprint(changed, [])).not.toBe(fingerprint(library, []))
    expect(evaluationFingerprint(changed, [])).toBe(evaluationFingerprint(library, []))
  })

  test('is the only setting of training that a measurement outlives', () => {
    const before = evaluationFingerprint(library, [])
    expect(evaluationFingerprint(withTraining({ matcher: 'kernel' }), [])).not.toBe(before)
    expect(evaluationFingerprint(withTraining({ length: 40 }), [])).not.toBe(before)
  })
})
