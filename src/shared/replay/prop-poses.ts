import { multiply, type Quaternion, rotate } from '../attitude/quaternion'
import { trackAttitude } from '../attitude/track-attitude'
import type { Replay } from '../model/replay'
import { AXES, type SampleBlock } from '../model/sample'
import type { Target } from '../model/target'
import { unitsPerCount } from '../present/target-choices'
import { tipInPhone } from '../target/board'

/** Heading is taken from the tip unless it stands closer to the vertical than this (sin 25°). */
const LEVEL_SHARE = 0.42

/** What the board read, back in SI units and in the axes of the prop. */
export function propSamples({ counts, rateHz }: Replay, target: Target): SampleBlock {
  const { mps2, dps } = unitsPerCount(target)
  const m = target.mounting
  const values = new Float32Array(counts.length)
  for (let at = 0; at < counts.length; at += AXES / 2) {
    const unit = (at / 3) % 2 === 0 ? mps2 : dps
    for (let axis = 0; axis < 3; axis++) {
      // The mounting turns prop axes into board axes; its transpose turns them back.
      const back = m[axis]! * counts[at]! + m[3 + axis]! * counts[at + 1]!
      values[at + axis] = unit * (back + m[6 + axis]! * counts[at + 2]!)
    }
  }
  const tMs = Float64Array.from({ length: counts.length / AXES }, (_, i) => (1000 * i) / rateHz)
  return { tMs, values }
}

/**
 * Attitude of the prop at every sample of a replay, prop to world: z up, and turned about it so that
 * the tip starts pointing along y. A prop that starts upright is taken to show its front to -y.
 */
export function propPoses(replay: Replay, target: Target): Quaternion[] {
  const poses = trackAttitude(propSamples(replay, target), 1)
  const [start] = poses
  if (start === undefined) return []
  const tip = rotate(start, tipInPhone(target))
  const level = Math.hypot(tip[0], tip[1]) < LEVEL_SHARE ? rotate(start, [0, 0, -1]) : tip
  const turn = Math.atan2(level[0], level[1])
  const ahead: Quaternion = [Math.cos(turn / 2), 0, 0, Math.sin(turn / 2)]
  return poses.map((pose) => multiply(ahead, pose))
}
