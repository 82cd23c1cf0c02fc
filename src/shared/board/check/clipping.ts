import { AXES, AXIS_NAMES } from '../../model/sample'
import { BOARD_SCALE } from '../../words/en/board-finding-scale'
import { type BoardLog, rowCount } from '../log/board-log'
import type { BenchLog } from './bench-log'
import { traceOf } from './evidence'
import type { Finding } from './finding'
import { CLIP_ABOVE_DPS, CLIP_ABOVE_G } from './limits'

/** Rows at the very same extreme value that make a flat top. */
const FLAT_ROWS = 4

interface Flat {
  axis: number
  /** Signed, g or deg/s. */
  value: number
  rows: number
  at: number
}

/** Flat tops in the shake: the movement goes beyond the range. */
export function checkClipping(bench: BenchLog): Finding | null {
  const log = bench.part('shake')
  if (log === null) return null
  const tops = Array.from({ length: AXES }, (_, axis) =>
    bench.frozen.has(axis) ? null : flatTop(bench, log, axis),
  ).filter((flat) => flat !== null)
  const worst = tops.sort((a, b) => b.rows - a.rows)[0]
  if (worst === undefined) return null
  const isAccel = worst.axis < 3
  if (!isAccel) bench.gyroClipped = true
  const range = isAccel ? bench.target.accel.fullScale : bench.target.gyro.fullScale
  return {
    code: 'clipped',
    ...BOARD_SCALE.clipped({
      axis: AXIS_NAMES[worst.axis] ?? '',
      value: worst.value,
      unit: isAccel ? 'g' : '°/s',
      rows: worst.rows,
      largerRange: Math.abs(worst.value) < 0.9 * range ? range : null,
    }),
    evidence: traceOf(bench, log, [worst.axis], Math.max(0, worst.at - 60)),
  }
}

function flatTop(bench: BenchLog, log: BoardLog, axis: number): Flat | null {
  const values = bench.column(log, axis)
  const least = axis < 3 ? CLIP_ABOVE_G : CLIP_ABOVE_DPS
  const ends = [
    values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY),
    values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY),
  ]
  for (const extreme of ends) {
    if (!(Math.abs(extreme) >= least)) continue
    let rows = 0
    let neighbours = 0
    let at = -1
    for (let row = 0; row < rowCount(log); row++) {
      if (values[row] !== extreme) continue
      rows++
      if (at < 0) at = row
      if (row > 0 && values[row - 1] === extreme) neighbours++
    }
    if (rows >= FLAT_ROWS && neighbours >= 2) return { axis, value: extreme, rows, at }
  }
  return null
}
