import { describe, expect, it } from 'vitest'
import { angleOf, conjugate, multiply, rotate } from '../../../src/shared/attitude/quaternion'
import { conditionRecording } from '../../../src/shared/conditioning/condition-recording'
import type { Replay } from '../../../src/shared/model/replay'
import type { SampleBlock } from '../../../src/shared/model/sample'
import type { Target } from '../../../src/shared/model/target'
import { propPoses, propSamples } from '../../../src/shared/replay/prop-poses'
import { defaultTarget } from '../../../src/shared/target/default-target'
import { MOUNTINGS } from '../../../src/shared/target/mountings'
import { evenTimes, sampled } from '../conditioning/samples'

const degrees = (radians: number) => (radians * 180) / Math.PI

function replayOf(samples: SampleBlock, target: Target): Replay {
  const { counts, rateHz } = conditionRecording(samples, target, 1)
  const length = counts.length / 6
  return {
    rateHz,
    recordedCount: length,
    counts,
    energy: new Uint32Array(length),
    phase: new Uint8Array(length),
    onThreshold: 1,
    offThreshold: 1,
    events: [],
    gestureDistances: [],
    queries: [],
  }
}

/** Flat for half a second, then the tip rises by 60° in a second: a turn about the phone's x. */
const raised = sampled(evenTimes(60, 2), (t) => {
  const angle = (Math.min(Math.max(t - 0.5, 0), 1) * 60 * Math.PI) / 180
  const turning = t > 0.5 && t <= 1.5
  return [0, 9.80665 * Math.sin(angle), 9.80665 * Math.cos(angle), turning ? 60 : 0, 0, 0]
})

describe('poses of the prop', () => {
  it('are the same for each of the 24 mountings, as the mounting is turned back', () => {
    const plain = defaultTarget()
    const expected = propPoses(replayOf(raised, plain), plain).at(-1)!
    for (const { matrix } of MOUNTINGS) {
      // The long axis is the one that the phone's top lies along.
      const along = [0, 1, 2].find((row) => matrix[3 * row + 1] === 1)
      if (along === undefined) continue
      const target = { ...plain, mounting: matrix, longAxis: (['x', 'y', 'z'] as const)[along] }
      const pose = propPoses(replayOf(raised, target), target).at(-1)!
      expect(degrees(angleOf(multiply(pose, conjugate(expected))))).toBeLessThan(0.2)
    }
  })

  it('start with the tip ahead and end with it 60° up, ahead still', () => {
    const target = defaultTarget()
    const poses = propPoses(replayOf(raised, target), target)
    const start = rotate(poses[0]!, [0, 1, 0])
    expect(start[0]).toBeCloseTo(0, 6)
    expect(start[1]).toBeCloseTo(1, 2)
    const end = rotate(poses.at(-1)!, [0, 1, 0])
    expect(degrees(Math.asin(end[2]))).toBeCloseTo(60, 0)
    expect(end[0]).toBeCloseTo(0, 2)
  })

  it('come from what the board read, back in units: within half a count', () => {
    const target = defaultTarget()
    const replay = replayOf(raised, target)
    const { values } = propSamples(replay, target)
    const halfCount = (target.accel.nanoPerLsb / 1e9) * 9.80665 * 0.5
    expect(Math.abs(values[2] - 9.80665)).toBeLessThanOrEqual(halfCount * 1.01)
  })
})
