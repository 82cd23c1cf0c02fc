import type { FullLibrary, RecordingWithSamples } from '../model/library'
import type { SampleBlock } from '../model/sample'
import type { Matrix3, Target } from '../model/target'
import { tipInPhone } from '../target/board'

type Vec = [number, number, number]

/** How the prop sits in the hand beside how it was recorded, deg. */
export interface GripChange {
  /** Turn about the long axis, as in the demo's grips: anticlockwise seen from the tip is positive. */
  rollDeg: number
  /** Tilt of the long axis about an axis across it. */
  tiltDeg: number
}

/** Rotation by an angle about a unit vector (Rodrigues), row-major. */
export function rotationAbout([x, y, z]: Vec, angleDeg: number): Matrix3 {
  const [c, s] = [Math.cos((angleDeg * Math.PI) / 180), Math.sin((angleDeg * Math.PI) / 180)]
  const k = 1 - c
  return [
    c + k * x * x,
    k * x * y - s * z,
    k * x * z + s * y,
    k * x * y + s * z,
    c + k * y * y,
    k * y * z - s * x,
    k * x * z - s * y,
    k * y * z + s * x,
    c + k * z * z,
  ]
}

/**
 * What a sensor in the turned prop would have read, before any conditioning: readings of a body turned
 * by R in the hand are Rᵀ times those before. The sensor stays where it was; an off-axis sensor would
 * move by its distance from the axis.
 */
export function turnSamples(samples: SampleBlock, change: GripChange, target: Target): SampleBlock {
  const long = tipInPhone(target)
  const roll = rotationAbout(long, -change.rollDeg)
  const tilt = rotationAbout(acrossAxis(long), -change.tiltDeg)
  const values = new Float32Array(samples.values.length)
  for (let i = 0; i < values.length; i += 3) {
    const v = samples.values.subarray(i, i + 3)
    const tilted = times(tilt, v[0]!, v[1]!, v[2]!)
    values.set(times(roll, ...tilted), i)
  }
  return { tMs: samples.tMs, values }
}

/** A library whose recordings are turned, each by its own change. */
export function turnLibrary(
  full: FullLibrary,
  changeOf: (recording: RecordingWithSamples, index: number) => GripChange,
): FullLibrary {
  const { target } = full.library
  return {
    library: full.library,
    recordings: full.recordings.map((one, index) => ({
      ...one,
      samples: turnSamples(one.samples, changeOf(one, index), target),
    })),
  }
}

/** A unit vector at right angles to the long axis: the axis of the phone it has least of, squared up. */
function acrossAxis(long: Vec): Vec {
  const least = [0, 1, 2].reduce(
    (best, i) => (Math.abs(long[i]!) < Math.abs(long[best]!) ? i : best),
    0,
  )
  const across: Vec = [0, 0, 0]
  across[least] = 1
  for (let i = 0; i < 3; i++) across[i]! -= long[least]! * long[i]!
  const length = Math.hypot(...across)
  return [across[0] / length, across[1] / length, across[2] / length]
}

function times(m: Matrix3, x: number, y: number, z: number): Vec {
  return [
    m[0] * x + m[1] * y + m[2] * z,
    m[3] * x + m[4] * y + m[5] * z,
    m[6] * x + m[7] * y + m[8] * z,
  ]
}
