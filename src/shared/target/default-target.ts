import type { Target } from '../model/target'
import { TARGET_NAMES } from '../words/en/target-names'
import { IDENTITY_MOUNTING } from './mountings'

/**
 * The target a new library starts with: a hand prop with a small 32-bit microcontroller.
 *
 * - 52 Hz: below the 60 Hz of a phone, so that the phone can show everything the board will see;
 *   faster boards get content that no phone take has.
 * - ±8 g and ±1000 deg/s (which reads up to ±1146): a knock passes 4 g and a flick of the wrist
 *   passes 500 deg/s, and a clipped peak is lost, while the step of 0.244 mg is still 40 times finer
 *   than a phone's.
 * - Sensor mounted as the phone lies in the hand, long axis along the phone's y.
 */
export function defaultTarget(): Target {
  return {
    name: TARGET_NAMES.handProp,
    preset: 'decimal',
    accel: { fullScale: 8, nanoPerLsb: 244_000 },
    gyro: { fullScale: 1000, nanoPerLsb: 35_000_000 },
    rateHz: 52,
    mounting: [...IDENTITY_MOUNTING],
    longAxis: 'y',
    clockHz: 48_000_000,
    flashBytes: 128 * 1024,
    ramBytes: 16 * 1024,
    modelBudgetBytes: 32 * 1024,
  }
}
