import { fail, ok, type Result } from '../shared/model/result'
import { STANDARD_GRAVITY_MPS2 } from '../shared/model/sample'
import { SENSOR_TROUBLE } from '../shared/words/en/sensor-trouble'
import type { MotionSample } from './motion-source'

/** A rest shorter than this says too little. */
export const REST_NEEDED_MS = 800
const SAMPLES_NEEDED = 10
/** Standard deviation of any axis at rest: three steps of a phone's rounding. */
const ACCEL_SPREAD_MAX_MPS2 = 0.3
const GYRO_SPREAD_MAX_DPS = 4
/** Share by which gravity may differ: a phone's sensor is off by a few percent. */
const GRAVITY_TOLERANCE = 0.08

export type Vector3 = readonly [x: number, y: number, z: number]

/**
 * Mean acceleration while the phone rests, m/s², in the phone's own sign. Fails when the samples
 * are too few, moved, or are not as long as gravity.
 */
export function restingAcceleration(samples: readonly MotionSample[]): Result<Vector3> {
  const durationMs = (samples.at(-1)?.tMs ?? 0) - (samples[0]?.tMs ?? 0)
  if (samples.length < SAMPLES_NEEDED || durationMs < REST_NEEDED_MS) {
    return fail(
      'rest/too-short',
      SENSOR_TROUBLE.tooFewReadings(samples.length, Math.round(durationMs)),
    )
  }
  const accelSpread = Math.max(
    ...(['ax', 'ay', 'az'] as const).map((axis) => spread(samples, axis)),
  )
  const gyroSpread = Math.max(...(['gx', 'gy', 'gz'] as const).map((axis) => spread(samples, axis)))
  if (accelSpread > ACCEL_SPREAD_MAX_MPS2 || gyroSpread > GYRO_SPREAD_MAX_DPS) {
    return fail('rest/moving', SENSOR_TROUBLE.moved(accelSpread, gyroSpread))
  }
  const mean: Vector3 = [average(samples, 'ax'), average(samples, 'ay'), average(samples, 'az')]
  const length = Math.hypot(...mean)
  if (Math.abs(length / STANDARD_GRAVITY_MPS2 - 1) > GRAVITY_TOLERANCE) {
    return fail('rest/not-gravity', SENSOR_TROUBLE.notGravity(length))
  }
  return ok(mean)
}

type Axis = Exclude<keyof MotionSample, 'tMs'>

function average(samples: readonly MotionSample[], axis: Axis): number {
  return samples.reduce((sum, sample) => sum + sample[axis], 0) / samples.length
}

function spread(samples: readonly MotionSample[], axis: Axis): number {
  const mean = average(samples, axis)
  const squares = samples.reduce((sum, sample) => sum + (sample[axis] - mean) ** 2, 0)
  return Math.sqrt(squares / samples.length)
}
