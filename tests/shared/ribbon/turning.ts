import {
  conjugate,
  fromRotationVector,
  multiply,
  type Quaternion,
  rotate,
} from '../../../src/shared/attitude/quaternion'
import type { Vector3 } from '../../../src/shared/attitude/vector'
import type { SampleBlock } from '../../../src/shared/model/sample'
import { createRandom } from '../../../src/shared/statistics/random'
import { evenTimes, sampled } from '../conditioning/samples'

export const RAD = Math.PI / 180

/** From 0 at the start to 1 at the end with rest at both (minimum jerk). */
export function eased(t: number, durationS: number, startS = 0.2): number {
  const u = Math.min(1, Math.max(0, (t - startS) / durationS))
  return u * u * u * (10 - 15 * u + 6 * u * u)
}

export function turn(x: number, y: number, z: number): Quaternion {
  return fromRotationVector([x * RAD, y * RAD, z * RAD])
}

interface Motion {
  /** Prop to world, seconds; z of the world up. */
  attitude: (t: number) => Quaternion
  /** Place of the fist, m. */
  place?: (t: number) => Vector3
  seconds: number
  /** Noise and rounding of a phone, by seed; none without. */
  seed?: number
}

const STEP_S = 1e-4

/** Readings of an ideal sensor in the fist, derivatives by central differences, 60 Hz. */
export function recorded(motion: Motion): SampleBlock {
  const { attitude, place = () => [0, 0, 0], seconds, seed } = motion
  const random = createRandom(seed ?? 0)
  const phone = (value: number, noise: number) =>
    seed === undefined ? value : Math.round((value + noise * random.normal()) * 10) / 10
  return sampled(evenTimes(60, seconds), (t) => {
    const q = attitude(t)
    const step = multiply(conjugate(attitude(t - STEP_S)), attitude(t + STEP_S))
    const sign = step[0] < 0 ? -1 : 1
    const rate = step.slice(1).map((v) => (sign * v) / STEP_S / RAD)
    const [before, now, after] = [place(t - 1e-3), place(t), place(t + 1e-3)]
    const force = now.map((p, i) => (before[i]! - 2 * p + after[i]!) / 1e-6)
    const read = rotate(conjugate(q), [force[0]!, force[1]!, force[2]! + 9.80665])
    return [...read.map((v) => phone(v, 0.05)), ...rate.map((v) => phone(v, 0.3))] as [
      number,
      number,
      number,
      number,
      number,
      number,
    ]
  })
}

/** The same movement left for right: x of a vector and y, z of a rotation change sign. */
export function mirrored(block: SampleBlock): SampleBlock {
  const signs = [-1, 1, 1, 1, -1, -1]
  return { tMs: block.tMs, values: block.values.map((v, i) => v * signs[i % 6]!) }
}
