import type { DeviceFacts } from '../model/library'
import type { SampleBlock } from '../model/sample'
import type { Random } from '../statistics/random'
import type { SensedMotion, Vector3 } from './rigid-body'

/** Steps that browsers round to (W3C Device Orientation and Motion). */
export const ACCEL_STEP_MPS2 = 0.1
export const GYRO_STEP_DPS = 0.1
/** Rate at which browsers deliver motion. */
export const PHONE_RATE_HZ = 60

/** Typical of phone sensors; 30 Hz is the noise bandwidth of 60 Hz samples. */
const ACCEL_NOISE_MPS2 = 180e-6 * 9.80665 * Math.sqrt(30)
const GYRO_NOISE_DPS = 0.008 * Math.sqrt(30)
/** Standard deviation of the delivery time, ms, its grain, and the share of readings lost. */
const JITTER_MS = 0.4
const TIME_GRAIN_MS = 0.1
const DROP_SHARE = 0.003

/** Faults of one phone's sensor. */
export interface PhoneSensor {
  accelBiasMps2: Vector3
  gyroBiasDps: Vector3
  accelScale: number
  gyroScale: number
}

export const PERFECT_SENSOR: PhoneSensor = {
  accelBiasMps2: [0, 0, 0],
  gyroBiasDps: [0, 0, 0],
  accelScale: 1,
  gyroScale: 1,
}

export function drawPhoneSensor(random: Random): PhoneSensor {
  const triple = (sd: number): Vector3 => [
    sd * random.normal(),
    sd * random.normal(),
    sd * random.normal(),
  ]
  return {
    accelBiasMps2: triple(0.08),
    gyroBiasDps: triple(0.4),
    accelScale: 1 + 0.006 * random.normal(),
    gyroScale: 1 + 0.006 * random.normal(),
  }
}

/** Facts of a recording made by this sensor. */
export function phoneFacts(label: string): DeviceFacts {
  return {
    label,
    rateHz: PHONE_RATE_HZ,
    accelStepMps2: ACCEL_STEP_MPS2,
    gyroStepDps: GYRO_STEP_DPS,
    accelSign: 1,
    hasGyro: true,
  }
}

/** Six values in sample order: m/s², deg/s; without noise or rounding. */
export function idealReading(motion: SensedMotion): number[] {
  const degrees = motion.angularRate.map((rate) => (rate * 180) / Math.PI)
  return [...motion.specificForce, ...degrees]
}

/** Six values as the browser hands them over: scale, bias, noise, rounding. */
export function phoneReading(motion: SensedMotion, sensor: PhoneSensor, random: Random): number[] {
  const ideal = idealReading(motion)
  return ideal.map((value, axis) => {
    const isAccel = axis < 3
    const scale = isAccel ? sensor.accelScale : sensor.gyroScale
    const bias = (isAccel ? sensor.accelBiasMps2[axis] : sensor.gyroBiasDps[axis - 3]) ?? 0
    const noise = (isAccel ? ACCEL_NOISE_MPS2 : GYRO_NOISE_DPS) * random.normal()
    return roundToStep(scale * value + bias + noise, isAccel ? ACCEL_STEP_MPS2 : GYRO_STEP_DPS)
  })
}

/** Nearest multiple; through the count of steps in one, which is whole, to keep decimals clean. */
export function roundToStep(value: number, step: number): number {
  const perUnit = Math.round(1 / step)
  // Adding zero turns -0, which rounding makes of small negative values, into 0.
  return Math.round(value * perUnit) / perUnit + 0
}

/** One recording sampled by a phone: 60 Hz with jitter and a reading lost now and then. */
export class PhoneRecorder {
  readonly #tMs: number[] = []
  readonly #values: number[] = []
  readonly #sensor: PhoneSensor
  readonly #random: Random

  constructor(sensor: PhoneSensor, random: Random) {
    this.#sensor = sensor
    this.#random = random
  }

  /** @param timeS when the reading was taken, never decreasing. */
  take(timeS: number, motion: SensedMotion): void {
    const random = this.#random
    // Drawn even when the reading is lost, so that a loss does not change what follows.
    const reading = phoneReading(motion, this.#sensor, random)
    const delivered = timeS * 1000 + JITTER_MS * random.normal()
    const isFirst = this.#tMs.length === 0
    if (random.next() < DROP_SHARE && !isFirst) return
    const last = this.#tMs[this.#tMs.length - 1] ?? 0
    this.#tMs.push(isFirst ? 0 : Math.max(last, roundToStep(delivered, TIME_GRAIN_MS)))
    this.#values.push(...reading)
  }

  finish(): SampleBlock {
    return { tMs: Float64Array.from(this.#tMs), values: Float32Array.from(this.#values) }
  }
}
