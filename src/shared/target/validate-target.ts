import { fail, ok, type Result } from '../model/result'
import type { Matrix3, SensorRange, Target } from '../model/target'
import { TARGET_TROUBLE } from '../words/en/target-trouble'
import { determinant, orthonormalError } from './rotation'

export const MIN_RATE_HZ = 12.5
export const MAX_RATE_HZ = 400

/** Entries of mounting · mountingᵀ may be this far off: entries typed with three decimals pass. */
export const MOUNTING_TOLERANCE = 0.005

/** Fewest counts that full scale may have; a sensor of eight signed bits has 128. */
const MIN_FULL_SCALE_COUNTS = 100
/** int16, with a little room for ranges that are printed rounded. */
const MAX_FULL_SCALE_COUNTS = 32768 * 1.01

/** Checks that a matrix is a rotation. A mirroring is told apart: it hides a flipped axis sign. */
export function validateMounting(matrix: Matrix3): Result<Matrix3> {
  if (matrix.length !== 9 || !matrix.every(Number.isFinite)) {
    return fail('target/mounting', TARGET_TROUBLE.mountingEmpty)
  }
  const error = orthonormalError(matrix)
  if (error > MOUNTING_TOLERANCE) {
    return fail('target/mounting-not-rotation', TARGET_TROUBLE.noRotation(error))
  }
  if (determinant(matrix) < 0) {
    return fail('target/mounting-flipped', TARGET_TROUBLE.mirrored)
  }
  return ok(matrix)
}

function validateRange(
  range: SensorRange,
  sensor: 'accelerometer' | 'gyroscope',
  unit: string,
): Result<SensorRange> {
  const code = `target/${sensor}`
  if (!(range.fullScale > 0) || !Number.isFinite(range.fullScale)) {
    return fail(code, TARGET_TROUBLE.fullScale(sensor, unit))
  }
  if (
    !Number.isInteger(range.nanoPerLsb) ||
    range.nanoPerLsb < 1 ||
    range.nanoPerLsb > 0xffffffff
  ) {
    return fail(code, TARGET_TROUBLE.sensitivity(sensor, unit))
  }
  const counts = (range.fullScale * 1e9) / range.nanoPerLsb
  if (counts < MIN_FULL_SCALE_COUNTS || counts > MAX_FULL_SCALE_COUNTS) {
    return fail(
      code,
      TARGET_TROUBLE.fullScaleCount({ sensor, fullScale: range.fullScale, unit, counts }),
    )
  }
  return ok(range)
}

function validateBoardFigures(target: Target): Result<null> {
  const figures: [number, Parameters<typeof TARGET_TROUBLE.figure>[0]][] = [
    [target.clockHz, 'clock'],
    [target.flashBytes, 'flash'],
    [target.ramBytes, 'ram'],
    [target.modelBudgetBytes, 'modelFlash'],
  ]
  for (const [value, what] of figures) {
    if (!Number.isFinite(value) || value <= 0) {
      return fail('target/board', TARGET_TROUBLE.figure(what))
    }
  }
  if (target.modelBudgetBytes > target.flashBytes) {
    return fail(
      'target/board',
      TARGET_TROUBLE.modelOverFlash(target.modelBudgetBytes, target.flashBytes),
    )
  }
  return ok(null)
}

/** Checks every field of a target; gives the first thing that is wrong. */
export function validateTarget(target: Target): Result<Target> {
  if (target.name.trim() === '') return fail('target/name', TARGET_TROUBLE.noName)
  if (!(target.rateHz >= MIN_RATE_HZ && target.rateHz <= MAX_RATE_HZ)) {
    return fail(
      'target/rate',
      TARGET_TROUBLE.rate({ rateHz: target.rateHz, least: MIN_RATE_HZ, most: MAX_RATE_HZ }),
    )
  }
  if (!['x', 'y', 'z'].includes(target.longAxis)) {
    return fail('target/long-axis', TARGET_TROUBLE.longAxis)
  }
  const checks = [
    validateRange(target.accel, 'accelerometer', 'g'),
    validateRange(target.gyro, 'gyroscope', 'deg/s'),
    validateMounting(target.mounting),
    validateBoardFigures(target),
  ]
  for (const check of checks) if (!check.ok) return check
  return ok(target)
}
