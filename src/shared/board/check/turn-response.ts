import type { Matrix3 } from '../../model/target'
import { mean } from '../../statistics/summary'
import { type BoardLog, rowCount } from '../log/board-log'
import { solve3 } from '../math/solve3'
import type { BenchLog } from './bench-log'
import type { StepId } from './steps'

/** Stretches over which both sensors are compared, s: long over noise, short over the turn. */
const STRETCH_S = 0.25
/** Rest at each end of a turn from which the bias is taken, as a share of the log. */
const REST_SHARE = 0.06
/** A turn of less than this gives no comparison, rad. */
const LEAST_TURN = Math.PI / 2

type Vec = [number, number, number]

export interface TurnResponse {
  /** Gyroscope reading for one deg/s as gravity saw it: row = gyroscope axis. */
  matrix: Matrix3
  /** Turn about each axis that gravity saw, deg. */
  turnedDeg: number
}

/**
 * Gyroscope against gravity: while the board turns about a level axis, the accelerometer sees gravity
 * turn about it the other way, du/dt = -ω × u. Over short stretches the turn of gravity is compared with
 * the integral of the gyroscope, by least squares over all turns. Needs no exact turn by the hand, and
 * tells a mirrored sensor: a mirroring turns the sign of every cross product.
 * @param zero reading of the accelerometer at no acceleration, g
 */
export function turnResponse(bench: BenchLog, zero: readonly number[]): TurnResponse | null {
  const right: number[] = new Array(9).fill(0)
  const gram: number[] = new Array(9).fill(0)
  let turned = 0
  for (const axis of ['x', 'y', 'z']) {
    const log = bench.part(`turn-${axis}` as StepId)
    if (log === null) return null
    const seen = accumulate(bench, log, zero, right, gram)
    if (seen < LEAST_TURN) return null
    turned += seen
  }
  const rows = [0, 1, 2].map((row) =>
    solve3(gram as Matrix3, right.slice(3 * row, 3 * row + 3) as Vec),
  )
  if (rows.some((row) => row === null)) return null
  return { matrix: rows.flat() as Matrix3, turnedDeg: (turned * 60) / Math.PI }
}

/** Adds one turn's stretches to the normal equations; returns the angle gravity turned by, rad. */
function accumulate(
  bench: BenchLog,
  log: BoardLog,
  zero: readonly number[],
  right: number[],
  gram: number[],
): number {
  const count = rowCount(log)
  const step = Math.max(2, Math.round(STRETCH_S * bench.rateHz))
  const bias = restMeans(bench, log)
  const timeS = (row: number) => (log.tMs === null ? row / bench.rateHz : log.tMs[row]! / 1000)
  const smooth = Math.max(1, Math.floor(step / 3))
  let turned = 0
  for (let from = smooth; from + step + smooth < count; from += step) {
    const to = from + step
    const gravity = turnBetween(
      direction(bench, log, from, smooth, zero),
      direction(bench, log, to, smooth, zero),
    )
    const gyro: Vec = [0, 0, 0]
    for (let row = from + 1; row <= to; row++) {
      const half = (timeS(row) - timeS(row - 1)) / 2
      for (let axis = 0; axis < 3; axis++) {
        const sum = bench.value(log, row, 3 + axis) + bench.value(log, row - 1, 3 + axis)
        gyro[axis]! += half * (sum - 2 * bias[axis]!)
      }
    }
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 3; j++) {
        right[3 * i + j]! += ((gyro[i]! * Math.PI) / 180) * gravity[j]!
        gram[3 * i + j]! += gravity[i]! * gravity[j]!
      }
    }
    turned += Math.hypot(...gravity)
  }
  return turned
}

function restMeans(bench: BenchLog, log: BoardLog): number[] {
  const count = rowCount(log)
  const rest = Math.max(2, Math.floor(REST_SHARE * count))
  return [3, 4, 5].map((axis) => {
    const values = bench.column(log, axis)
    return mean([...values.slice(0, rest), ...values.slice(count - rest)])
  })
}

/** Direction of gravity around a row, averaged over `half` rows to each side. */
function direction(
  bench: BenchLog,
  log: BoardLog,
  row: number,
  half: number,
  zero: readonly number[],
): Vec {
  const sum: Vec = [0, 0, 0]
  for (let i = row - half; i <= row + half; i++) {
    for (let axis = 0; axis < 3; axis++) sum[axis]! += bench.value(log, i, axis) - zero[axis]!
  }
  const length = Math.hypot(...sum)
  return length === 0 ? [0, 0, 0] : [sum[0] / length, sum[1] / length, sum[2] / length]
}

/** Turn of the board that leads gravity from a to b in its axes, rad. */
function turnBetween(a: Vec, b: Vec): Vec {
  const cross: Vec = [
    b[1] * a[2] - b[2] * a[1],
    b[2] * a[0] - b[0] * a[2],
    b[0] * a[1] - b[1] * a[0],
  ]
  const sine = Math.hypot(...cross)
  const cosine = a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
  const factor = sine < 1e-9 ? 0 : Math.atan2(sine, cosine) / sine
  return [cross[0] * factor, cross[1] * factor, cross[2] * factor]
}
