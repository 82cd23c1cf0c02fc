import { AXES } from '../../model/sample'
import { BOARD_BUS } from '../../words/en/board-finding-bus'
import { type BoardLog, rowCount } from '../log/board-log'
import type { BenchLog } from './bench-log'
import { rowsOf } from './evidence'
import type { Finding } from './finding'
import { FEWEST_ROWS } from './limits'

/** Nothing came, too little, or words that no sensor makes. Nothing else can be asked then. */
export function checkSilence(bench: BenchLog): Finding | null {
  if (bench.rows === 0) return NO_DATA
  const log = bench.parts[0]!.log
  const every = (test: (value: number) => boolean) =>
    bench.parts.every(({ log: { values, gyroUnit } }) =>
      values.every((value, i) => (gyroUnit === null && i % AXES >= 3) || test(value)),
    )
  if (every((value) => value === 0)) return { ...ALL_ZERO, evidence: rowsOf(log) }
  if (bench.isCounts && every(isAllOnes)) {
    return { ...ALL_ONES, evidence: rowsOf(log) }
  }
  if (bench.rows >= FEWEST_ROWS) return null
  return {
    code: 'too-short',
    ...BOARD_BUS.tooShort(bench.rows, FEWEST_ROWS),
    evidence: rowsOf(log),
  }
}

/**
 * Rows of only zeros or only ones among good ones: gravity and noise make both impossible, so the bus
 * failed there. They would spoil every mean, so nothing more is asked.
 */
export function checkDeadRows(bench: BenchLog): Finding | null {
  let dead = 0
  let example: { log: BoardLog; row: number } | null = null
  for (const { log } of bench.parts) {
    const axes = log.gyroUnit === null ? 3 : AXES
    for (let row = 0; row < rowCount(log); row++) {
      const values = log.values.subarray(AXES * row, AXES * row + axes)
      if (!values.every((value) => value === 0) && !values.every(isAllOnes)) continue
      dead++
      example ??= { log, row }
    }
  }
  if (example === null) return null
  return {
    code: 'dead-rows',
    ...BOARD_BUS.deadRows(dead, bench.rows),
    evidence: rowsOf(example.log, Math.max(0, example.row - 2)),
  }
}

function isAllOnes(value: number): boolean {
  return value === -1 || value === 0xffff
}

const NO_DATA: Finding = {
  code: 'no-data',
  ...BOARD_BUS.noData,
  evidence: { kind: 'rows', rows: [] },
}

const ALL_ZERO: Omit<Finding, 'evidence'> = {
  code: 'all-zero',
  ...BOARD_BUS.allZero,
}

const ALL_ONES: Omit<Finding, 'evidence'> = {
  code: 'all-ones',
  ...BOARD_BUS.allOnes,
}
