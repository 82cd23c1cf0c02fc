import { AXES, AXIS_NAMES } from '../../model/sample'
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
  const unit = isAccel ? 'g' : '°/s'
  const below = Math.abs(worst.value) < 0.9 * range
  return {
    code: 'clipped',
    title: 'The range is too small for a firm shake',
    seen: `${AXIS_NAMES[worst.axis]} stays at ${worst.value.toPrecision(3)} ${unit} over ${worst.rows} rows: a flat top${below ? `, though the target’s range is ±${range} ${unit}` : ''}.`,
    causes: [
      ...(below ? ['A smaller range is set in the sensor than the target says.'] : []),
      'The range is smaller than the movement.',
      'The driver cuts values, such as to 12 bits.',
    ],
    next: [
      'Set the next larger range in the firmware and on Prop, and train again.',
      'Shake as hard as the prop will be moved and log again.',
    ],
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
