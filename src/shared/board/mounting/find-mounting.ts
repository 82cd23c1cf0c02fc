import { fail, ok, type Result } from '../../model/result'
import type { Matrix3 } from '../../model/target'
import { type Mounting, nearestMounting } from '../../target/mountings'
import { MOUNTING_TROUBLE } from '../../words/en/board-mounting-trouble'
import { alignTimes, type TimeAlignment } from './align-times'
import {
  accelAt,
  type EvenSeries,
  evenly,
  gyroAt,
  type MotionSeries,
  smoothed,
  withoutBias,
} from './series'
import { apply, solveWahba, type Vec, type VectorPair } from './wahba'

/** Grid both series are brought to, Hz, and the half width of their smoothing, points. */
const GRID_HZ = 100
const SMOOTH_HALF = 3
/** Slower turns are mostly noise and bias, deg/s. */
const LEAST_DPS = 25
/** At rest for this many points, below this rate, a pose counts. */
const STILL_POINTS = 40
const STILL_DPS = 6
/** Below this the turns were about one axis. */
const LEAST_CERTAINTY = 0.04
const FEWEST_PAIRS = 50
/** Share of the motion that no rotation explains: above it the two do not belong together. */
const MOST_RESIDUAL = 0.35

export interface FoundMounting {
  /** board = rotation · phone. */
  rotation: Matrix3
  nearest: Mounting
  /** From the rotation found to the nearest axis-parallel one, deg. */
  nearestAngleDeg: number
  times: TimeAlignment
  /** rms of what the rotation leaves of the angular rate, as a share of it. */
  residualShare: number
  /** Board's angular rate over the phone's. */
  gyroRatio: number
  turnPairs: number
  poses: number
  certainty: number
}

/**
 * Mounting of a board from a phone strapped to the same prop while both logged: times by the
 * correlation of |angular rate|, which no rotation changes; then the rotation from angular rates and
 * still poses. Accelerations in motion are left out: at another place on the prop they differ by ω² r.
 * Codes: 'mounting/short', those of alignTimes, 'mounting/one-axis', 'mounting/mirrored',
 * 'mounting/unlike'.
 */
export function findMounting(phone: MotionSeries, board: MotionSeries): Result<FoundMounting> {
  if (phone.tMs.length < 100 || board.tMs.length < 100) {
    return fail('mounting/short', MOUNTING_TROUBLE.tooShort)
  }
  const aligned = alignTimes(phone, board, GRID_HZ)
  if (!aligned.ok) return aligned
  const times = aligned.value
  const stretched = { values: board.values, tMs: Array.from(board.tMs, (t) => t * times.rateRatio) }
  const p = withoutBias(smoothed(evenly(phone, GRID_HZ), SMOOTH_HALF))
  const b = withoutBias(smoothed(evenly(stretched, GRID_HZ), SMOOTH_HALF))
  const pairs = turnPairs(p, b, times.lagMs)
  if (pairs.length < FEWEST_PAIRS) {
    return fail('mounting/short', MOUNTING_TROUBLE.tooLittleMotion)
  }
  const poses = posePairs(p, b, times.lagMs)
  const all = [...balanced(pairs), ...balanced(poses)]
  const fit = solveWahba(all)
  const refused = refusal(fit, pairs)
  if (refused !== null) return refused
  const { residualShare, gyroRatio } = compare(fit.rotation, pairs)
  if (residualShare > MOST_RESIDUAL) {
    return fail('mounting/unlike', MOUNTING_TROUBLE.noRotation(residualShare))
  }
  const { mounting, angleDeg } = nearestMounting(fit.rotation)
  return ok({
    rotation: fit.rotation,
    nearest: mounting,
    nearestAngleDeg: angleDeg,
    times,
    residualShare,
    gyroRatio,
    turnPairs: pairs.length,
    poses: poses.length,
    certainty: fit.certainty,
  })
}

function refusal(fit: ReturnType<typeof solveWahba>, pairs: readonly VectorPair[]) {
  const [s0, , s2] = fit.singular
  if (fit.mirrored && s2 > 0.1 * s0) {
    return fail('mounting/mirrored', MOUNTING_TROUBLE.mirrored)
  }
  // The poses alone may fix what the turns do not, so certainty is that of both together.
  if (fit.certainty >= LEAST_CERTAINTY) return null
  const [x, y, z] = pairs.reduce<Vec>(
    (sum, { a }) => [sum[0] + Math.abs(a[0]), sum[1] + Math.abs(a[1]), sum[2] + Math.abs(a[2])],
    [0, 0, 0],
  )
  const axis = ['x', 'y', 'z'][[x, y, z].indexOf(Math.max(x, y, z))]!
  return fail('mounting/one-axis', MOUNTING_TROUBLE.oneAxis(axis))
}

/** Angular rates at the same instants. */
function turnPairs(p: EvenSeries, b: EvenSeries, lagMs: number): VectorPair[] {
  const pairs: VectorPair[] = []
  forShared(p, b, lagMs, (i, j) => {
    const [phone, board] = [gyroAt(p, i), gyroAt(b, j)]
    if (Math.hypot(...phone) < LEAST_DPS) return
    pairs.push({ a: board, b: phone, weight: 1 })
  })
  return pairs
}

/** Directions of gravity while both rest, one for each rest. */
function posePairs(p: EvenSeries, b: EvenSeries, lagMs: number): VectorPair[] {
  const pairs: VectorPair[] = []
  let run = 0
  forShared(p, b, lagMs, (i, j) => {
    const still = Math.hypot(...gyroAt(p, i)) < STILL_DPS && Math.hypot(...gyroAt(b, j)) < STILL_DPS
    run = still ? run + 1 : 0
    if (run !== STILL_POINTS) return
    const middle = STILL_POINTS >> 1
    const [phone, board] = [unit(accelAt(p, i - middle)), unit(accelAt(b, j - middle))]
    if (phone !== null && board !== null) pairs.push({ a: board, b: phone, weight: 1 })
  })
  return pairs
}

function forShared(
  p: EvenSeries,
  b: EvenSeries,
  lagMs: number,
  visit: (i: number, j: number) => void,
) {
  const shift = Math.round((lagMs * GRID_HZ) / 1000)
  for (let i = Math.max(0, -shift); i < Math.min(p.count, b.count - shift); i++) visit(i, i + shift)
}

/** Weights so that the whole set counts as much as one unit vector. */
function balanced(pairs: readonly VectorPair[]): VectorPair[] {
  const total = pairs.reduce((sum, { a, b }) => sum + Math.hypot(...a) * Math.hypot(...b), 0)
  return total === 0 ? [] : pairs.map((pair) => ({ ...pair, weight: 1 / total }))
}

function compare(rotation: Matrix3, pairs: readonly VectorPair[]) {
  let [dot, size, left, all] = [0, 0, 0, 0]
  for (const { a, b } of pairs) {
    const c = apply(rotation, b)
    dot += a[0] * c[0] + a[1] * c[1] + a[2] * c[2]
    size += c[0] ** 2 + c[1] ** 2 + c[2] ** 2
  }
  const gyroRatio = dot / size
  for (const { a, b } of pairs) {
    const c = apply(rotation, b)
    for (let i = 0; i < 3; i++) {
      left += (a[i]! - gyroRatio * c[i]!) ** 2
      all += a[i]! ** 2
    }
  }
  return { residualShare: Math.sqrt(left / all), gyroRatio }
}

function unit([x, y, z]: Vec): Vec | null {
  const length = Math.hypot(x, y, z)
  return length > 0 ? [x / length, y / length, z / length] : null
}
