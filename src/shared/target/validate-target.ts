import { fail, ok, type Result } from '../model/result'
import type { Matrix3, SensorRange, Target } from '../model/target'
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
    return fail('target/mounting', 'The mounting needs nine numbers: fill in the empty ones.')
  }
  const error = orthonormalError(matrix)
  if (error > MOUNTING_TOLERANCE) {
    return fail(
      'target/mounting-not-rotation',
      `The mounting is not a rotation (its rows are off by ${error.toFixed(3)}): rows must have length 1 and stand at right angles.`,
    )
  }
  if (determinant(matrix) < 0) {
    return fail(
      'target/mounting-flipped',
      'The mounting mirrors the prop, so an axis sign is flipped: change the sign of one row.',
    )
  }
  return ok(matrix)
}

function validateRange(range: SensorRange, sensor: string, unit: string): Result<SensorRange> {
  const code = `target/${sensor}`
  if (!(range.fullScale > 0) || !Number.isFinite(range.fullScale)) {
    return fail(
      code,
      `The ${sensor}'s full scale must be above 0 ${unit}: take it from the data sheet.`,
    )
  }
  if (
    !Number.isInteger(range.nanoPerLsb) ||
    range.nanoPerLsb < 1 ||
    range.nanoPerLsb > 0xffffffff
  ) {
    return fail(
      code,
      `The ${sensor}'s sensitivity must be a whole number of 1e-9 ${unit} a count, from 1 to 4294967295: take it from the data sheet.`,
    )
  }
  const counts = (range.fullScale * 1e9) / range.nanoPerLsb
  if (counts < MIN_FULL_SCALE_COUNTS || counts > MAX_FULL_SCALE_COUNTS) {
    return fail(
      code,
      `The ${sensor}'s sensitivity puts full scale (${range.fullScale} ${unit}) at count ${Math.round(counts)}, which 16 bits cannot be: check the unit of the sensitivity and that it is the one of this range.`,
    )
  }
  return ok(range)
}

function validateBoardFigures(target: Target): Result<null> {
  const figures: [number, string][] = [
    [target.clockHz, 'clock'],
    [target.flashBytes, 'flash'],
    [target.ramBytes, 'RAM'],
    [target.modelBudgetBytes, 'flash for the model'],
  ]
  for (const [value, what] of figures) {
    if (!Number.isFinite(value) || value <= 0) {
      return fail('target/board', `The board's ${what} must be a number above 0.`)
    }
  }
  if (target.modelBudgetBytes > target.flashBytes) {
    return fail(
      'target/board',
      `The model may take ${target.modelBudgetBytes} bytes but the board has ${target.flashBytes} bytes of flash: lower the model's share.`,
    )
  }
  return ok(null)
}

/** Checks every field of a target; gives the first thing that is wrong. */
export function validateTarget(target: Target): Result<Target> {
  if (target.name.trim() === '') return fail('target/name', 'The target has no name: give it one.')
  if (!(target.rateHz >= MIN_RATE_HZ && target.rateHz <= MAX_RATE_HZ)) {
    return fail(
      'target/rate',
      `The output data rate is ${target.rateHz} Hz: choose one from ${MIN_RATE_HZ} to ${MAX_RATE_HZ} Hz.`,
    )
  }
  if (!['x', 'y', 'z'].includes(target.longAxis)) {
    return fail('target/long-axis', 'The axis along the prop must be x, y or z of the board.')
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
