import type { SensorRange } from '../model/target'
import { TARGET_NAMES } from '../words/en/target-names'

/** A family of six-axis sensors that share their ranges, sensitivities and output data rates. */
export interface SensorFamily {
  /** Key stored in `Target.preset`. */
  key: string
  /** For people. */
  name: string
  /** Smallest range first. */
  accelRanges: readonly SensorRange[]
  gyroRanges: readonly SensorRange[]
  /** Nominal output data rates between 12.5 and 400 Hz. A part may be some per cent off. */
  ratesHz: readonly number[]
}

/**
 * Sensitivities as data sheets of the family print them, exact in 1e-9 g and 1e-9 deg/s.
 *
 * The gyroscope of this family does not use all its counts: at ±250 deg/s one count is
 * 8.75 mdeg/s, so that full scale is count 28571 and not 32768. Range / 32768 would be 14.7 % wrong.
 * Source: public register driver of a part of the family (accelerometer 0.061 mg, gyroscope
 * 4.375 mdeg/s a count in the smallest range).
 */
const DECIMAL: SensorFamily = {
  key: 'decimal',
  name: TARGET_NAMES.decimal,
  accelRanges: [
    { fullScale: 2, nanoPerLsb: 61_000 },
    { fullScale: 4, nanoPerLsb: 122_000 },
    { fullScale: 8, nanoPerLsb: 244_000 },
    { fullScale: 16, nanoPerLsb: 488_000 },
  ],
  gyroRanges: [
    { fullScale: 125, nanoPerLsb: 4_375_000 },
    { fullScale: 250, nanoPerLsb: 8_750_000 },
    { fullScale: 500, nanoPerLsb: 17_500_000 },
    { fullScale: 1000, nanoPerLsb: 35_000_000 },
    { fullScale: 2000, nanoPerLsb: 70_000_000 },
  ],
  ratesHz: [12.5, 26, 52, 104, 208],
}

/**
 * Sensitivities where full scale is count 32768: 16384 counts a g at ±2 g, 131.072 counts a deg/s at
 * ±250 deg/s (data sheets print 131, which is 0.05 % off). Rounded to whole 1e-9 units, an error
 * below 8e-6 of the value.
 */
const POWER_OF_TWO: SensorFamily = {
  key: 'power-of-two',
  name: TARGET_NAMES.powerOfTwo,
  accelRanges: [
    { fullScale: 2, nanoPerLsb: 61_035 },
    { fullScale: 4, nanoPerLsb: 122_070 },
    { fullScale: 8, nanoPerLsb: 244_141 },
    { fullScale: 16, nanoPerLsb: 488_281 },
  ],
  gyroRanges: [
    { fullScale: 125, nanoPerLsb: 3_814_697 },
    { fullScale: 250, nanoPerLsb: 7_629_395 },
    { fullScale: 500, nanoPerLsb: 15_258_789 },
    { fullScale: 1000, nanoPerLsb: 30_517_578 },
    { fullScale: 2000, nanoPerLsb: 61_035_156 },
  ],
  ratesHz: [12.5, 25, 50, 100, 200, 400],
}

export const TARGET_PRESETS: readonly SensorFamily[] = [DECIMAL, POWER_OF_TWO]

/** The family of a key; null for 'custom' and unknown keys. */
export function sensorFamily(key: string): SensorFamily | null {
  return TARGET_PRESETS.find((family) => family.key === key) ?? null
}
