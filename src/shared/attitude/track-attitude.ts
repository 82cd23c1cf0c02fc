import type { AccelSign } from '../model/library'
import type { SampleBlock } from '../model/sample'
import { AttitudeFilter } from './attitude-filter'
import type { Quaternion } from './quaternion'
import { isStill } from './stillness'
import { add, scale, type Vector3 } from './vector'

/** Gravity at the start is averaged over this long while the prop is still, else it is one sample. */
const START_MS = 150
/** A longer hole is not integrated across: what turned in it is not known. */
const LONGEST_STEP_S = 0.25

/** Accelerometer of sample i with its sign set right, m/s². */
export function accelAt(block: SampleBlock, i: number, sign: AccelSign): Vector3 {
  const factor = sign === -1 ? -1 : 1
  const at = 6 * i
  return [
    factor * block.values[at]!,
    factor * block.values[at + 1]!,
    factor * block.values[at + 2]!,
  ]
}

/** Gyroscope of sample i, deg/s. */
export function rateAt(block: SampleBlock, i: number): Vector3 {
  const at = 6 * i + 3
  return [block.values[at]!, block.values[at + 1]!, block.values[at + 2]!]
}

/** Up as the accelerometer shows it at the start, not of length 1. */
function startUp(block: SampleBlock, sign: AccelSign): Vector3 {
  let end = 1
  while (end < block.tMs.length && block.tMs[end]! - block.tMs[0]! <= START_MS) end++
  if (!isStill(block, 0, end)) return accelAt(block, 0, sign)
  let sum: Vector3 = [0, 0, 0]
  for (let i = 0; i < end; i++) sum = add(sum, accelAt(block, i, sign))
  return scale(sum, 1 / end)
}

/** Seconds from sample i - 1 to i as far as it is integrated. */
export function stepSeconds(block: SampleBlock, i: number): number {
  return Math.min(LONGEST_STEP_S, Math.max(0, (block.tMs[i]! - block.tMs[i - 1]!) / 1000))
}

function hasRates(block: SampleBlock): boolean {
  for (let i = 0; i < block.tMs.length; i++) {
    if (rateAt(block, i).some((rate) => rate !== 0)) return true
  }
  return false
}

/** Attitude, prop to world, at every sample of a recording; z of the world points up. */
export function trackAttitude(block: SampleBlock, sign: AccelSign): Quaternion[] {
  if (block.tMs.length === 0) return []
  const filter = new AttitudeFilter(startUp(block, sign), rateAt(block, 0), hasRates(block))
  const attitudes = [filter.attitude]
  for (let i = 1; i < block.tMs.length; i++) {
    attitudes.push(filter.push(stepSeconds(block, i), accelAt(block, i, sign), rateAt(block, i)))
  }
  return attitudes
}
