import { AXES, AXIS_NAMES } from '../../model/sample'
import { BOARD_SAMPLES } from '../../words/en/board-finding-samples'
import { type BoardLog, rowCount } from '../log/board-log'
import type { BenchLog } from './bench-log'
import { rowsOf, traceOf } from './evidence'
import type { Finding } from './finding'
import { DOUBLED_LIMIT, FROZEN_ROWS, REPEATED_LIMIT } from './limits'

/** Axes that never change. Marks them, so that nothing more is asked of them. */
export function checkFrozen(bench: BenchLog): Finding | null {
  if (bench.rows < FROZEN_ROWS) return null
  const axes = bench.hasGyro ? AXES : 3
  // A still board on a coarse range may well repeat itself: a sensor must have been moved.
  const moved = bench.moved().length > 0
  const faces = bench.parts.filter(({ step }) => step.startsWith('face')).length
  for (let axis = 0; axis < axes; axis++) {
    if (!moved && (axis >= 3 || faces < 2)) continue
    const values = bench.parts.flatMap(({ log }) => extremesOf(log, axis))
    if (Math.min(...values) === Math.max(...values)) bench.frozen.add(axis)
  }
  if (bench.frozen.size === 0) return null
  const frozen = [...bench.frozen]
  const log = bench.moved()[0] ?? bench.parts[0]!.log
  const all = frozen.length === axes
  const whole = !all && frozen.length === 3 && (frozen[0] === 0 || frozen[0] === 3)
  return {
    code: 'frozen',
    ...BOARD_SAMPLES.frozen({
      rows: bench.rows,
      axes: frozen.map((axis) => ({ name: nameOf(axis), value: log.values[axis] ?? 0 })),
      which: all ? 'all' : whole ? 'one-sensor' : 'some',
    }),
    evidence: traceOf(bench, log, sameSensor(frozen[0]!)),
  }
}

/** Same six values twice in a row while the board moves. */
export function checkRepeats(bench: BenchLog): Finding | null {
  let pairs = 0
  let same = 0
  let example: { log: BoardLog; row: number } | null = null
  for (const log of bench.moved()) {
    const count = rowCount(log)
    // The ends of a turn are rest, where small noise on a coarse range repeats by itself.
    for (let row = Math.ceil(0.25 * count); row < Math.floor(0.75 * count); row++) {
      pairs++
      if (!sameRow(log, row)) continue
      same++
      example ??= { log, row }
    }
  }
  const share = same / pairs
  if (example === null || same < 3 || !(share > DOUBLED_LIMIT)) return null
  const evidence = rowsOf(example.log, Math.max(0, example.row - 2))
  if (share >= REPEATED_LIMIT) {
    return {
      code: 'repeated',
      ...BOARD_SAMPLES.repeated(share, pairs),
      evidence,
    }
  }
  return {
    code: 'doubled',
    ...BOARD_SAMPLES.doubled(share, pairs),
    evidence,
  }
}

function sameRow(log: BoardLog, row: number): boolean {
  for (let axis = 0; axis < AXES; axis++) {
    if (log.values[AXES * row + axis] !== log.values[AXES * (row - 1) + axis]) return false
  }
  return row > 0
}

function extremesOf(log: BoardLog, axis: number): [number, number] {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let row = 0; row < rowCount(log); row++) {
    const value = log.values[AXES * row + axis]!
    if (value < low) low = value
    if (value > high) high = value
  }
  return [low, high]
}

function nameOf(axis: number): string {
  return AXIS_NAMES[axis] ?? ''
}

function sameSensor(axis: number): number[] {
  return axis < 3 ? [0, 1, 2] : [3, 4, 5]
}
