import type { ModelBoard } from '../model/recogniser-model'
import type { Target } from '../model/target'

/** The sensor's setting as the core compares it: mHz, 1e-9 g and 1e-9 deg/s a count. */
export function boardOf(target: Target): ModelBoard {
  return {
    rateMillihertz: Math.round(target.rateHz * 1000),
    accelNgPerLsb: target.accel.nanoPerLsb,
    gyroNdpsPerLsb: target.gyro.nanoPerLsb,
  }
}

/** Index of the long axis in board axes, as the model holds it. */
export function longAxisIndex(target: Target): 0 | 1 | 2 {
  return target.longAxis === 'x' ? 0 : target.longAxis === 'y' ? 1 : 2
}

/**
 * Direction of the prop's tip in the axes of the phone: the board's positive long axis turned back
 * through the mounting (a row of the matrix, as prop = mountingᵀ · board).
 */
export function tipInPhone(target: Target): [number, number, number] {
  const row = 3 * longAxisIndex(target)
  const m = target.mounting
  return [m[row]!, m[row + 1]!, m[row + 2]!]
}
