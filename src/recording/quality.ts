import { conditionRecording } from '../shared/conditioning/condition-recording'
import { findGaps } from '../shared/conditioning/timing'
import type { DeviceFacts } from '../shared/model/library'
import { AXES, type SampleBlock } from '../shared/model/sample'
import type { Target } from '../shared/model/target'
import { RECORDING } from '../shared/words/en/recording'
import { describeMovement, type Movement } from './movement'
import type { QualityWord } from './types'

/** A movement shorter than this has hardly a dozen samples on a phone to compare. */
const SHORTEST_MS = 200

/** What is to be said of a take at once, worst first; 'good' when there is nothing. */
export function judgeTake(
  samples: SampleBlock,
  device: Pick<DeviceFacts, 'hasGyro' | 'accelSign'>,
  target: Target,
): QualityWord[] {
  const movement = describeMovement(samples)
  const words = [
    judgeMovement(movement),
    judgeClipping(samples, device, target),
    judgeGaps(samples),
    judgeGyro(device),
  ].filter((word) => word !== null)
  return words.length > 0 ? words : [goodWord(movement, samples)]
}

export function judgeMovement(movement: Movement): QualityWord | null {
  const { durationMs, fastestDps, strongestMps2 } = movement
  if (durationMs === 0) {
    return {
      code: 'nothing-moved',
      text: RECORDING.nothingMoved(fastestDps, strongestMps2),
    }
  }
  if (durationMs >= SHORTEST_MS) return null
  return {
    code: 'too-short',
    text: RECORDING.tooShort(durationMs, SHORTEST_MS),
  }
}

/** Counts what the target's sensor, as it is mounted and set up, could not have shown. */
export function judgeClipping(
  samples: SampleBlock,
  { accelSign }: Pick<DeviceFacts, 'accelSign'>,
  target: Target,
): QualityWord | null {
  const { counts, clippedCount } = conditionRecording(samples, target, accelSign)
  if (clippedCount === 0) return null
  return {
    code: 'clipped',
    text: RECORDING.clipped(
      clippedCount,
      counts.length,
      target.accel.fullScale,
      target.gyro.fullScale,
    ),
  }
}

/** Whether a hole in the readings lies in the movement, and not only in the rest around it. */
export function movementHasGap(samples: SampleBlock): boolean {
  const { startMs, endMs } = describeMovement(samples)
  return findGaps(samples.tMs).some((gap) => gap.startMs < endMs && gap.endMs > startMs)
}

export function judgeGaps({ tMs }: SampleBlock): QualityWord | null {
  const gaps = findGaps(tMs)
  if (gaps.length === 0) return null
  const longest = Math.max(...gaps.map(({ startMs, endMs }) => endMs - startMs))
  return {
    code: 'gap',
    text: RECORDING.gapsSeen(gaps.length, longest),
  }
}

export function judgeGyro({ hasGyro }: Pick<DeviceFacts, 'hasGyro'>): QualityWord | null {
  if (hasGyro) return null
  return {
    code: 'no-gyro',
    text: RECORDING.noGyroscope,
  }
}

function goodWord({ durationMs, fastestDps }: Movement, { values }: SampleBlock): QualityWord {
  return {
    code: 'good',
    text: RECORDING.good(durationMs / 1000, fastestDps, values.length / AXES),
  }
}
