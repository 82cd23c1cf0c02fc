import { AXES, AXIS_NAMES } from '../../model/sample'
import { type BoardLog, rowCount } from '../log/board-log'
import type { BenchLog } from './bench-log'
import type { Evidence } from './finding'

const MOST_POINTS = 240
const MOST_ROWS = 6

/** Some axes of a log as lines, from the given row on; in g or deg/s. */
export function traceOf(
  bench: BenchLog,
  log: BoardLog,
  axes: readonly number[],
  from = 0,
): Evidence {
  const to = Math.min(rowCount(log), from + MOST_POINTS)
  const lines = axes.map((axis) => ({
    label: AXIS_NAMES[axis] ?? '',
    values: Array.from({ length: to - from }, (_, i) => bench.value(log, from + i, axis)),
  }))
  const durationS = Math.max(0, to - from - 1) / bench.rateHz
  return { kind: 'trace', lines, durationS, unit: (axes[0] ?? 0) < 3 ? 'g' : '°/s' }
}

/** The first rows as printed; counts also as the 16 bits they are. */
export function rowsOf(log: BoardLog, from = 0): Evidence {
  const count = Math.min(MOST_ROWS, rowCount(log) - from)
  const rows = Array.from({ length: Math.max(0, count) }, (_, i) => {
    const row = [...log.values.subarray(AXES * (from + i), AXES * (from + i + 1))]
    const plain = row.map((value) => Number(value.toPrecision(6))).join('  ')
    return log.accelUnit === 'count' ? `${plain}   (${row.map(hexWord).join(' ')})` : plain
  })
  return { kind: 'rows', rows }
}

function hexWord(value: number): string {
  return (Math.trunc(value) & 0xffff).toString(16).toUpperCase().padStart(4, '0')
}
