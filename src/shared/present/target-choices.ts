import { AXES, STANDARD_GRAVITY_MPS2 } from '../model/sample'
import type { SensorRange, Target } from '../model/target'
import { sensorFamily } from '../target/presets'
import { SENSOR_RANGE } from '../words/en/sensor-range'

/** Key of a target whose sensor figures were typed in. */
export const CUSTOM_PRESET = 'custom'

/**
 * The target with another family's sensor: ranges keep their full scale where the family has it, else
 * the nearest, and sensitivities are always the family's. 'custom' and unknown keys keep all figures.
 */
export function withFamily(target: Target, key: string): Target {
  const family = sensorFamily(key)
  if (family === null) return { ...target, preset: CUSTOM_PRESET }
  return {
    ...target,
    preset: family.key,
    accel: { ...nearestRange(family.accelRanges, target.accel.fullScale) },
    gyro: { ...nearestRange(family.gyroRanges, target.gyro.fullScale) },
    rateHz: nearest(family.ratesHz, target.rateHz),
  }
}

/** '±8 g: 0.244 mg a count'. */
export function rangeText(range: SensorRange, unit: 'g' | 'deg/s'): string {
  return SENSOR_RANGE.step(range, unit)
}

/** How far 16 bits of a range reach, where that is over 1 % from its full scale; else empty. */
export function reachText(range: SensorRange, unit: 'g' | 'deg/s'): string {
  const reach = (range.nanoPerLsb * 32_767) / 1e9
  if (Math.abs(reach / range.fullScale - 1) <= 0.01) return ''
  return SENSOR_RANGE.reach(reach, unit)
}

/** Values of the listed axes at an end of int16, where the sensor could not say more. */
export function countsAtEnd(counts: Int16Array, axes: number[]): number {
  let hits = 0
  for (let row = 0; row + AXES <= counts.length; row += AXES) {
    for (const axis of axes) {
      const count = counts[row + axis]
      if (count === 32_767 || count === -32_768) hits += 1
    }
  }
  return hits
}

/** What one count is: m/s² on the accelerometer's axes, deg/s on the gyroscope's. */
export function unitsPerCount(target: Target): { mps2: number; dps: number } {
  return {
    mps2: (target.accel.nanoPerLsb / 1e9) * STANDARD_GRAVITY_MPS2,
    dps: target.gyro.nanoPerLsb / 1e9,
  }
}

function nearestRange(ranges: readonly SensorRange[], fullScale: number): SensorRange {
  const scale = nearest(
    ranges.map((range) => range.fullScale),
    fullScale,
  )
  return ranges.find((range) => range.fullScale === scale) ?? { fullScale, nanoPerLsb: 1 }
}

function nearest(values: readonly number[], wanted: number): number {
  return values.reduce(
    (best, value) => (Math.abs(value - wanted) < Math.abs(best - wanted) ? value : best),
    values[0] ?? wanted,
  )
}
