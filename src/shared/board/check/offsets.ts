import { BOARD_SCALE } from '../../words/en/board-finding-scale'
import type { BenchLog } from './bench-log'
import type { Finding } from './finding'
import { ACCEL_ZERO_LIMIT_G, GYRO_ZERO_LIMIT_DPS } from './limits'
import { readFaces } from './poses'

const AXES = ['x', 'y', 'z']

/** Accelerometer at no acceleration, from opposite faces: the poses need not be exact for it. */
export function checkAccelOffset(bench: BenchLog): Finding | null {
  const faces = readFaces(bench)
  if (faces === null) return null
  const worst = largest(faces.offset)
  if (Math.abs(faces.offset[worst]!) <= ACCEL_ZERO_LIMIT_G) return null
  return {
    code: 'accel-offset',
    ...BOARD_SCALE.accelOffset(AXES[worst]!, faces.offset[worst]!),
    evidence: bars(faces.offset, ACCEL_ZERO_LIMIT_G, 'g'),
  }
}

/** Gyroscope while nothing turns. */
export function checkGyroOffset(bench: BenchLog): Finding | null {
  const still = bench.part('still')
  if (still === null || !bench.hasGyro) return null
  const means = bench.means(still).slice(3)
  const worst = largest(means)
  if (Math.abs(means[worst]!) <= GYRO_ZERO_LIMIT_DPS) return null
  return {
    code: 'gyro-offset',
    ...BOARD_SCALE.gyroOffset(AXES[worst]!, means[worst]!),
    evidence: bars(means, GYRO_ZERO_LIMIT_DPS, '°/s'),
  }
}

function largest(values: readonly number[]): number {
  return values.reduce(
    (best, value, i) => (Math.abs(value) > Math.abs(values[best]!) ? i : best),
    0,
  )
}

function bars(values: readonly number[], limit: number, unit: string) {
  return {
    kind: 'bars' as const,
    unit,
    bars: values.map((value, i) => ({ label: AXES[i]!, value, low: -limit, high: limit })),
  }
}
