import { AXES, STANDARD_GRAVITY_MPS2 } from '../model/sample'
import type { Target } from '../model/target'

export const INT16_MIN = -32768
export const INT16_MAX = 32767

/** Nearest whole number, halves away from zero: the rule of `lround` in C. */
export function roundHalfAway(value: number): number {
  return value < 0 ? -Math.round(-value) : Math.round(value)
}

/** Counts for one m/s² of the target's accelerometer. */
export function countsPerMps2(target: Target): number {
  return 1e9 / (STANDARD_GRAVITY_MPS2 * target.accel.nanoPerLsb)
}

/** Counts for one deg/s of the target's gyroscope. */
export function countsPerDps(target: Target): number {
  return 1e9 / target.gyro.nanoPerLsb
}

/**
 * Turns one sample (m/s², deg/s, prop axes) into what the target's sensor would read: board axes,
 * rounded, clipped to int16 as the sensor's registers are.
 */
export class Quantiser {
  readonly #mounting: readonly number[]
  readonly #factors: [number, number]
  /** Values clipped since the start. */
  clippedCount = 0

  constructor(target: Target) {
    this.#mounting = target.mounting
    this.#factors = [countsPerMps2(target), countsPerDps(target)]
  }

  /** Writes AXES counts to `out` from `offset` on. */
  write(row: ArrayLike<number>, out: Int16Array, offset: number): void {
    const m = this.#mounting
    for (let axis = 0; axis < AXES; axis++) {
      const sensor = axis < 3 ? 0 : 3
      const i = 3 * (axis - sensor)
      const turned =
        m[i]! * row[sensor]! + m[i + 1]! * row[sensor + 1]! + m[i + 2]! * row[sensor + 2]!
      const count = roundHalfAway(turned * this.#factors[sensor === 0 ? 0 : 1]!)
      const clipped = Math.min(INT16_MAX, Math.max(INT16_MIN, count))
      if (clipped !== count) this.clippedCount++
      out[offset + axis] = clipped
    }
  }
}
