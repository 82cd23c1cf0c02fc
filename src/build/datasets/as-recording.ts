import type { Recording } from '../../shared/model/library'
import { AXES, type SampleBlock, STANDARD_GRAVITY_MPS2 } from '../../shared/model/sample'
import type { Target } from '../../shared/model/target'

/** Counts of a target back to SI at its even rate: the values of the data set, in its own 16 bits. */
export function samplesFromCounts(counts: Int16Array, target: Target): SampleBlock {
  const unit = [
    (target.accel.nanoPerLsb * STANDARD_GRAVITY_MPS2) / 1e9,
    target.gyro.nanoPerLsb / 1e9,
  ] as const
  return {
    tMs: Float64Array.from({ length: counts.length / AXES }, (_, i) => (1000 * i) / target.rateHz),
    values: Float32Array.from(counts, (value, at) => value * unit[at % AXES < 3 ? 0 : 1]),
  }
}

/** Facts of a recording that comes from a data set; what the set does not say stays unknown. */
export function importedFacts(
  id: string,
  libraryId: string,
  testerCode: string,
  { tMs }: SampleBlock,
): Omit<Recording, 'kind' | 'gestureId' | 'trim'> {
  return {
    id,
    libraryId,
    testerCode,
    hand: 'unknown',
    source: 'imported',
    recordedAt: '2026-01-01T00:00:00Z',
    device: {
      label: '',
      rateHz: 0,
      accelStepMps2: 0,
      gyroStepDps: 0,
      accelSign: 1,
      hasGyro: true,
    },
    sampleCount: tMs.length,
    durationMs: tMs.at(-1) ?? 0,
    gaps: [],
    note: '',
    deletedAt: null,
  }
}
