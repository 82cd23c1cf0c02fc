import type { Quaternion } from '../attitude/quaternion'
import { rotate } from '../attitude/quaternion'
import { accelAt, rateAt, stepSeconds, trackAttitude } from '../attitude/track-attitude'
import {
  across,
  add,
  cross,
  direction,
  dot,
  norm,
  scale,
  subtract,
  type Vector3,
} from '../attitude/vector'
import type { AccelSign } from '../model/library'
import { type SampleBlock, STANDARD_GRAVITY_MPS2 } from '../model/sample'

/** From the fist to the point that draws, along the prop. */
const TIP_M = 0.3
/**
 * The point that draws hangs this far below the long axis, like a lantern under the end of its pole,
 * so that a twist about the axis draws an arc too and not a dot. Below and not above: a twist then
 * bulges downwards, where a sweep, which may be as long, bulges upwards (seen from above: ahead).
 */
const BELOW_M = 0.2

/** Heading is taken from the tip unless it stands closer to the vertical than this (sin 25°). */
const LEVEL_SHARE = 0.42

const UP: Vector3 = [0, 0, 1]
const AHEAD: Vector3 = [0, 1, 0]
const FRONT: Vector3 = [0, 0, 1]
const DEGREE = Math.PI / 180

/** The movement starts and ends where it is this share of its own peak, with a little around it. */
const ACTIVE_SHARE = 0.12
const AROUND_MS = 60
/** Weighs acceleration (m/s²) against speed (m/s) when looking for the movement. */
const ACCEL_SECONDS = 0.05

/** What the point drew during the movement, in the frame of its start: right, ahead, up, metres. */
export interface TipPath {
  points: Vector3[]
  /** Direction of the tip at each point, length 1. */
  tips: Vector3[]
  /** Where the fist is at each point, from where it started, metres. */
  fists: Vector3[]
  /** Direction of the prop's front, its z, at each point, length 1. */
  fronts: Vector3[]
  /** Speed at each point, m/s. */
  speeds: number[]
  durationMs: number
}

/** Turns the world so that the prop starts pointing ahead (y), whatever heading it was tracked in. */
function startFrame(attitude: Quaternion, tip: Vector3): (world: Vector3) => Vector3 {
  const pointing = rotate(attitude, tip)
  let level = across(pointing, UP)
  // Upright: the back of the phone faces away from the person who looks at its screen.
  if (norm(level) < LEVEL_SHARE) level = across(rotate(attitude, [0, 0, -1]), UP)
  const ahead = direction(level, AHEAD)
  const right = cross(ahead, UP)
  return (world) => [dot(world, right), dot(world, ahead), world[2]]
}

/**
 * Direction from the long axis to the point, in prop axes: below it as the prop is held at the
 * start, so that the roll of the grip does not matter.
 */
function belowInProp(attitude: Quaternion, tip: Vector3, frame: (v: Vector3) => Vector3): Vector3 {
  const [w, x, y, z] = attitude
  const toProp = (world: Vector3) => rotate([w, -x, -y, -z], world)
  const rightInProp: Vector3 = [
    frame(rotate(attitude, [1, 0, 0]))[0],
    frame(rotate(attitude, [0, 1, 0]))[0],
    frame(rotate(attitude, [0, 0, 1]))[0],
  ]
  return direction(cross(tip, rightInProp), toProp([0, 0, -1]))
}

/** Acceleration without gravity in the world of the attitude, m/s². */
function worldAcceleration(block: SampleBlock, q: Quaternion, i: number, sign: AccelSign): Vector3 {
  return subtract(rotate(q, accelAt(block, i, sign)), scale(UP, STANDARD_GRAVITY_MPS2))
}

/** First and last sample of the movement. */
function activeRange(block: SampleBlock, accelerations: readonly Vector3[]): [number, number] {
  const activity = accelerations.map(
    (a, i) => norm(rateAt(block, i)) * DEGREE * TIP_M + norm(a) * ACCEL_SECONDS,
  )
  const limit = ACTIVE_SHARE * activity.reduce((peak, value) => Math.max(peak, value), 0)
  let from = activity.findIndex((value) => value >= limit)
  let to = activity.length - 1
  while (to > from && activity[to]! < limit) to--
  const [startMs, endMs] = [block.tMs[from]! - AROUND_MS, block.tMs[to]! + AROUND_MS]
  while (from > 0 && block.tMs[from - 1]! >= startMs) from--
  while (to + 1 < block.tMs.length && block.tMs[to + 1]! <= endMs) to++
  return [from, to]
}

/** Integral by the trapezoid rule over samples from..to, starting at zero. */
function integrate(block: SampleBlock, from: number, values: readonly Vector3[]): Vector3[] {
  const sums: Vector3[] = [[0, 0, 0]]
  for (let k = 1; k < values.length; k++) {
    const step = stepSeconds(block, from + k) / 2
    sums.push(add(sums[k - 1]!, scale(add(values[k - 1]!, values[k]!), step)))
  }
  return sums
}

/**
 * Displacement of the fist: acceleration integrated twice. A movement starts and ends at rest, so the
 * speed left at the end is error and is taken off evenly in time (zero-velocity update).
 */
function displacement(block: SampleBlock, from: number, accelerations: Vector3[]): Vector3[] {
  const speeds = integrate(block, from, accelerations)
  const left = speeds.at(-1)!
  const startMs = block.tMs[from]!
  const lengthMs = block.tMs[from + speeds.length - 1]! - startMs
  const corrected = speeds.map((speed, k) => {
    const share = lengthMs > 0 ? (block.tMs[from + k]! - startMs) / lengthMs : 0
    return subtract(speed, scale(left, share))
  })
  return integrate(block, from, corrected)
}

function speedsAlong(block: SampleBlock, from: number, points: readonly Vector3[]): number[] {
  return points.map((_, k) => {
    const before = Math.max(0, k - 1)
    const after = Math.min(points.length - 1, k + 1)
    const seconds = (block.tMs[from + after]! - block.tMs[from + before]!) / 1000
    return seconds > 0 ? norm(subtract(points[after]!, points[before]!)) / seconds : 0
  })
}

/**
 * The path that the prop's tip draws in one take; null when there are too few samples to say, or a
 * value is not a number.
 * tip: direction of the tip in the axes of the samples, length 1.
 */
export function tipPath(block: SampleBlock, tip: Vector3, sign: AccelSign): TipPath | null {
  if (block.tMs.length < 4 || !block.values.every(Number.isFinite)) return null
  const attitudes = trackAttitude(block, sign)
  const worldAccelerations = attitudes.map((q, i) => worldAcceleration(block, q, i, sign))
  const [from, to] = activeRange(block, worldAccelerations)
  if (to - from < 3) return null
  const start = attitudes[from]!
  const frame = startFrame(start, tip)
  const below = belowInProp(start, tip, frame)
  const pointInProp = add(scale(tip, TIP_M), scale(below, BELOW_M))
  const moved = displacement(block, from, worldAccelerations.slice(from, to + 1))
  const turned = attitudes.slice(from, to + 1)
  const points = turned.map((q, k) => frame(add(rotate(q, pointInProp), moved[k]!)))
  return {
    points,
    tips: turned.map((q) => frame(rotate(q, tip))),
    fists: moved.map(frame),
    fronts: turned.map((q) => frame(rotate(q, FRONT))),
    speeds: speedsAlong(block, from, points),
    durationMs: block.tMs[to]! - block.tMs[from]!,
  }
}
