import { AXES, STANDARD_GRAVITY_MPS2 } from '../../model/sample'
import type { Target } from '../../model/target'
import type { Random } from '../../statistics/random'
import type { BenchPart } from '../check/steps'
import type { BoardLog } from '../log/board-log'
import type { SimulatedStep } from './routine'
import type { SimulatedSensor } from './sensor'

export interface LogStyle {
  /** 'count' prints words, 'si' prints g and deg/s. */
  units: 'count' | 'si'
  /** Times of the board's own clock in µs, or none. */
  timed: boolean
}

/** Ideal readings of one sample, in g and deg/s, before the sensor's own faults. */
export type Disturbance = (row: Float64Array, timeS: number) => void

/** What the sound sensor prints through the routine. */
export function logOf(
  steps: readonly SimulatedStep[],
  sensor: SimulatedSensor,
  target: Target,
  style: LogStyle,
  random: Random,
  disturb: Disturbance = () => {},
): BenchPart[] {
  return steps.map((step) => ({
    step: step.step,
    log: logStep(step, sensor, target, style, random, disturb),
  }))
}

function logStep(
  step: SimulatedStep,
  sensor: SimulatedSensor,
  target: Target,
  style: LogStyle,
  random: Random,
  disturb: Disturbance,
): BoardLog {
  const count = Math.floor(step.seconds * sensor.rateHz)
  const values = new Float64Array(AXES * count)
  const tMs = new Float64Array(count)
  const row = new Float64Array(AXES)
  const lsb = [target.accel.nanoPerLsb * 1e-9, target.gyro.nanoPerLsb * 1e-9] as const
  for (let i = 0; i < count; i++) {
    const timeS = i / sensor.rateHz
    const motion = step.at(timeS)
    for (let axis = 0; axis < 3; axis++) {
      row[axis] =
        sensor.accelGain[axis]! * (motion.specificForce[axis]! / STANDARD_GRAVITY_MPS2) +
        sensor.accelZeroG[axis]! +
        sensor.accelNoiseG * random.normal()
      row[axis + 3] =
        (sensor.gyroGain[axis]! * motion.angularRate[axis]! * 180) / Math.PI +
        sensor.gyroZeroDps[axis]! +
        sensor.gyroNoiseDps * random.normal()
    }
    disturb(row, timeS)
    for (let axis = 0; axis < AXES; axis++) {
      const step = lsb[axis < 3 ? 0 : 1]
      const word = Math.max(-32768, Math.min(32767, Math.round(row[axis]! / step)))
      values[AXES * i + axis] = style.units === 'count' ? word : word * step
    }
    // The board notes the time when its interrupt is served, some microseconds late.
    tMs[i] = Math.round(1000 * (1000 * timeS + 0.05 * Math.abs(random.normal()))) / 1000
  }
  return {
    values,
    accelUnit: style.units === 'count' ? 'count' : 'g',
    gyroUnit: style.units === 'count' ? 'count' : 'dps',
    tMs: style.timed ? tMs : null,
    clock: 'board',
    problems: [],
    problemCount: 0,
  }
}
