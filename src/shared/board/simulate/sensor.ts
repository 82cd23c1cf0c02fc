import type { Vector3 } from '../../demo/rigid-body'
import type { Target } from '../../model/target'
import type { Random } from '../../statistics/random'

/** One sound sensor of a cheap kind: what data sheets allow it to be off by. */
export interface SimulatedSensor {
  accelZeroG: Vector3
  gyroZeroDps: Vector3
  /** Gain of each axis, 1 when exact. */
  accelGain: Vector3
  gyroGain: Vector3
  /** rms a sample. */
  accelNoiseG: number
  gyroNoiseDps: number
  /** True output data rate, Hz. */
  rateHz: number
}

/**
 * A sensor within its data sheet: offsets up to ±50 mg (z: ±80 mg) and ±20 deg/s, gains within ±3 %, noise
 * density from a good part's to a cheap one's, an oscillator within ±3 %.
 */
export function drawSensor(random: Random, target: Target): SimulatedSensor {
  const triple = (low: number, high: number): Vector3 => [
    random.uniform(low, high),
    random.uniform(low, high),
    random.uniform(low, high),
  ]
  const root = Math.sqrt(target.rateHz / 2)
  return {
    accelZeroG: [
      random.uniform(-0.05, 0.05),
      random.uniform(-0.05, 0.05),
      random.uniform(-0.08, 0.08),
    ],
    gyroZeroDps: triple(-20, 20),
    accelGain: triple(0.97, 1.03),
    gyroGain: triple(0.97, 1.03),
    accelNoiseG: random.uniform(60e-6, 400e-6) * root,
    gyroNoiseDps: random.uniform(0.0035, 0.01) * root,
    rateHz: target.rateHz * random.uniform(0.97, 1.03),
  }
}
