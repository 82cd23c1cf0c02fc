import type { AccelSign } from '../model/library'
import type { SampleBlock } from '../model/sample'
import { median } from '../statistics/summary'
import { fromRotationVector, multiply, NO_ROTATION, type Quaternion, rotate } from './quaternion'
import { type Stretch, stillStretches } from './stillness'
import { accelAt, rateAt, stepSeconds } from './track-attitude'
import { add, direction, dot, norm, scale, type Vector3 } from './vector'

/** How far an attitude from the gyroscope alone goes wrong, as far as one recording shows it. */
export interface Drift {
  /** What the gyroscope shows where the prop is still: length of the median rate; null without rest. */
  rest: { dps: number; seconds: number } | null
  /**
   * From the first rest to the last: how much was turned in all, and the angle between gravity as the
   * gyroscope alone has it at the end and as the accelerometer shows it. Null without two rests.
   */
  turn: { turnedDeg: number; seconds: number; errorDeg: number } | null
}

const UP: Vector3 = [0, 0, 1]
const DEGREE = Math.PI / 180

/** Drift of a recording. Turns about the vertical leave gravity as it is and are not judged. */
export function measureDrift(block: SampleBlock, sign: AccelSign): Drift {
  const stretches = stillStretches(block)
  const [first] = stretches
  const last = stretches.at(-1)
  if (first === undefined || last === undefined) return { rest: null, turn: null }
  return {
    rest: restDrift(block, stretches),
    turn: first === last ? null : turnDrift(block, sign, firstHalf(first), lastHalf(last)),
  }
}

/** The halves of two rests that are away from the movement, which begins and ends unnoticed. */
function firstHalf({ from, to }: Stretch): Stretch {
  return { from, to: Math.ceil((from + to) / 2) }
}

function lastHalf({ from, to }: Stretch): Stretch {
  return { from: Math.floor((from + to) / 2), to }
}

function restDrift(block: SampleBlock, stretches: readonly Stretch[]): Drift['rest'] {
  const rates: Vector3[] = []
  let seconds = 0
  for (const { from, to } of stretches) {
    for (let i = from; i < to; i++) rates.push(rateAt(block, i))
    seconds += (block.tMs[to - 1]! - block.tMs[from]!) / 1000
  }
  // Medians: the edges of a rest already move.
  const middle = (axis: 0 | 1 | 2) => median(rates.map((rate) => rate[axis]))
  return { dps: norm([middle(0), middle(1), middle(2)]), seconds }
}

function turnDrift(
  block: SampleBlock,
  sign: AccelSign,
  first: Stretch,
  last: Stretch,
): Drift['turn'] {
  const before = meanUp(block, sign, first)
  const after = meanUp(block, sign, last)
  let turned: Quaternion = NO_ROTATION
  let turnedDeg = 0
  for (let i = first.to; i <= last.from; i++) {
    const seconds = stepSeconds(block, i)
    const meanDps = scale(add(rateAt(block, i - 1), rateAt(block, i)), 0.5)
    turned = multiply(turned, fromRotationVector(scale(meanDps, DEGREE * seconds)))
    turnedDeg += norm(meanDps) * seconds
  }
  // Prop at the end to prop at the start: gravity seen at the end belongs where it was seen first.
  const cosine = dot(rotate(turned, after), before)
  return {
    turnedDeg,
    seconds: (block.tMs[last.from]! - block.tMs[first.to - 1]!) / 1000,
    errorDeg: Math.acos(Math.max(-1, Math.min(1, cosine))) / DEGREE,
  }
}

function meanUp(block: SampleBlock, sign: AccelSign, { from, to }: Stretch): Vector3 {
  let sum: Vector3 = [0, 0, 0]
  for (let i = from; i < to; i++) sum = add(sum, accelAt(block, i, sign))
  return direction(sum, UP)
}
