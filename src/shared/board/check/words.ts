import { AXES } from '../../model/sample'
import { BOARD_BUS } from '../../words/en/board-finding-bus'
import { type BoardLog, rowCount } from '../log/board-log'
import type { BenchLog } from './bench-log'
import { rowsOf } from './evidence'
import type { Finding } from './finding'

/** How 16 bits may have been misread; each turns what was printed into what was meant. */
const READINGS: {
  name: 'as-is' | 'swapped' | 'unsigned' | 'offset'
  mend: (value: number) => number
}[] = [
  { name: 'as-is', mend: (value) => value },
  { name: 'swapped', mend: (value) => signed(swap(value)) },
  { name: 'unsigned', mend: signed },
  { name: 'offset', mend: (value) => signed(value ^ 0x8000) },
]

type Sensor = 'accelerometer' | 'gyroscope'

/** In motion a wrong reading is never smoother than the right one; twice as smooth decides. */
const SMOOTHER = 2
/** A jump smaller than this is no carry between bytes, counts. */
const ROUGH_COUNTS = 100

/**
 * Byte order and sign of words, sensor by sensor. What moves in the hand changes little from row to
 * row; misread words jump by whole bytes. Whichever reading makes the rows smooth was meant.
 */
export function checkWords(bench: BenchLog): Finding | null {
  if (!bench.isCounts) return null
  const moved = bench.moved()
  const logs = moved.length > 0 ? moved : bench.parts.map(({ log }) => log)
  for (const first of [0, 3]) {
    const sensor: Sensor = first === 0 ? 'accelerometer' : 'gyroscope'
    const rough = READINGS.map(({ mend }) => roughness(logs, first, mend))
    const best = rough.indexOf(Math.min(...rough))
    const asIs = rough[0]!
    const name = READINGS[best]!.name
    const impossible = logs.some(({ values }) => values.some((value) => value > 32767))
    const worse = asIs > ROUGH_COUNTS && asIs > SMOOTHER * rough[best]!
    if (name === 'swapped' && worse) return swapped(logs[0]!, sensor, asIs, rough[best]!)
    if (name !== 'as-is' && (worse || impossible))
      return format(logs[0]!, sensor, name === 'offset')
    if (impossible) return format(logs[0]!, sensor, false)
  }
  return null
}

/** Mean change from row to row over three axes, counts. */
function roughness(
  logs: readonly BoardLog[],
  first: number,
  mend: (value: number) => number,
): number {
  let sum = 0
  let count = 0
  for (const log of logs) {
    for (let row = 1; row < rowCount(log); row++) {
      for (let axis = first; axis < first + 3; axis++) {
        const now = mend(log.values[AXES * row + axis]!)
        sum += Math.abs(now - mend(log.values[AXES * (row - 1) + axis]!))
        count++
      }
    }
  }
  return sum / Math.max(1, count)
}

function signed(value: number): number {
  return ((value & 0xffff) << 16) >> 16
}

function swap(value: number): number {
  return ((value & 0xff) << 8) | ((value >> 8) & 0xff)
}

function swapped(log: BoardLog, sensor: Sensor, asIs: number, mended: number): Finding {
  return {
    code: 'byte-order',
    ...BOARD_BUS.bytesSwapped(sensor, asIs, mended),
    evidence: rowsOf(log),
  }
}

function format(log: BoardLog, sensor: Sensor, offset: boolean): Finding {
  return {
    code: 'number-format',
    ...BOARD_BUS.signMisread(sensor, offset ? 'offset-binary' : 'unsigned'),
    evidence: rowsOf(log),
  }
}
