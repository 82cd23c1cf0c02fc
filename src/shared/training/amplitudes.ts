import { AXES } from '../model/sample'
import { quantile } from '../statistics/summary'

/** One number for the accelerometer, one for the gyroscope, in counts. */
export type PerSensor = [accel: number, gyro: number]

/**
 * Root mean square over the three axes of each sensor.
 * @param from first sample
 * @param to one past the last
 * @param centred whether each axis has its mean taken off first
 */
export function rmsOf(
  counts: Int16Array,
  from: number,
  to: number,
  centred: readonly [accel: boolean, gyro: boolean],
): PerSensor {
  const squares: PerSensor = [0, 0]
  const n = Math.max(1, to - from)
  for (let axis = 0; axis < AXES; axis++) {
    const sensor = axis < 3 ? 0 : 1
    let sum = 0
    let squared = 0
    for (let i = from; i < to; i++) {
      const value = counts[i * AXES + axis]!
      sum += value
      squared += value * value
    }
    squares[sensor] += squared / n - (centred[sensor] ? (sum / n) ** 2 : 0)
  }
  return [Math.sqrt(Math.max(0, squares[0]) / 3), Math.sqrt(Math.max(0, squares[1]) / 3)]
}

/**
 * Noise of a hand at rest: median rms of short centred windows in which the segmenter was idle and
 * below its off threshold. Null when there is no such window.
 */
export function restNoise(
  recordings: readonly { counts: Int16Array; energy: Uint32Array; phase: Uint8Array }[],
  offThreshold: number,
  windowSamples: number,
): PerSensor | null {
  const accel: number[] = []
  const gyro: number[] = []
  for (const { counts, energy, phase } of recordings) {
    for (let from = 0; from + windowSamples <= energy.length; from += windowSamples) {
      const to = from + windowSamples
      if (!isAtRest(energy, phase, from, to, offThreshold)) continue
      const rms = rmsOf(counts, from, to, [true, true])
      accel.push(rms[0])
      gyro.push(rms[1])
    }
  }
  return accel.length === 0 ? null : [quantile(accel, 0.5), quantile(gyro, 0.5)]
}

function isAtRest(
  energy: Uint32Array,
  phase: Uint8Array,
  from: number,
  to: number,
  offThreshold: number,
): boolean {
  for (let i = from; i < to; i++) {
    if (phase[i] !== 0 || energy[i]! >= offThreshold) return false
  }
  return true
}
