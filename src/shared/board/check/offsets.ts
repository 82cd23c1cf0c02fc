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
    title: 'The accelerometer is off zero',
    seen: `${AXES[worst]} reads ${faces.offset[worst]!.toFixed(3)} g halfway between its two faces; up to ±0.08 g is printed for cheap parts.`,
    causes: [
      'The package is under stress: soldered by hand, bent board, a screw beside it, glue on it.',
      'The part was dropped or went through ultrasonic cleaning.',
      'An offset register holds a value from another board.',
    ],
    next: [
      'Loosen the screws and log again: does it change?',
      'Read the offset registers; they are zero after reset.',
      'Calibrate by six faces below: an offset is subtracted on the board.',
    ],
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
    title: 'The gyroscope is off zero',
    seen: `${AXES[worst]} reads ${means[worst]!.toFixed(1)} °/s at rest; up to ±20 °/s is printed for cheap parts.`,
    causes: [
      'The board turned while it should lie still.',
      'The part is hot or under stress.',
      'An offset register holds a value from another board, or a high-pass filter has not settled.',
    ],
    next: [
      'Log again ten seconds after power-up, on a table that nobody touches.',
      'Read the offset registers; they are zero after reset.',
      'Calibrate below: the bias is subtracted on the board.',
    ],
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
