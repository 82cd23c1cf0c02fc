import { AXES } from '../../model/sample'
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
    title: 'Too few rows',
    seen: `The log has ${bench.rows} ${bench.rows === 1 ? 'row' : 'rows'}; nothing can be said from fewer than ${FEWEST_ROWS}.`,
    causes: ['The log was ended early.', 'The board stopped after a few samples.'],
    next: [
      'Log for the seconds named in each step.',
      'Watch whether the board resets: does its first line come again?',
    ],
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
    title: 'The bus fails now and then',
    seen: `${dead} of ${bench.rows} rows hold only zeros or only ones, the others do not.`,
    causes: [
      'A wire or a solder joint is loose: it opens when the board is moved.',
      'Reads are interrupted, or two tasks use the bus at once.',
      'Pull-ups are too weak for the length of the wires, or the clock is too fast.',
    ],
    next: [
      'Move the wires and press on the sensor while logging: when do the rows come?',
      'Check the return value of every read, and print it.',
      'Look at the rising edges of clock and data with a scope: they must be up within a third of a bit.',
    ],
    evidence: rowsOf(example.log, Math.max(0, example.row - 2)),
  }
}

function isAllOnes(value: number): boolean {
  return value === -1 || value === 0xffff
}

const NO_DATA: Finding = {
  code: 'no-data',
  title: 'No data',
  seen: 'Not one reading came from the board.',
  causes: [
    'The board does not run, or waits for the sensor and hangs.',
    'The serial rate or the pins differ from what was chosen.',
    'The sensor does not acknowledge its address.',
  ],
  next: [
    'Measure the supply at the sensor, not at the regulator.',
    'Look at the transmit pin with a scope: the shortest pulse is one bit, so its length gives the baud rate.',
    'Scan the bus for addresses; try the other state of the address pin.',
  ],
  evidence: { kind: 'rows', rows: [] },
}

const ALL_ZERO: Omit<Finding, 'evidence'> = {
  code: 'all-zero',
  title: 'All words are zero',
  seen: 'Every value of every row is 0. A sensor at rest shows gravity and noise.',
  causes: [
    'The sensor is still in its power-down state: the rate was not set after reset.',
    'Reads start at a wrong register, or the data line is held low.',
    'The driver gives its buffer before the first read has ended.',
  ],
  next: [
    'Read the register that says who the sensor is: its fixed value proves bus and address.',
    'Read back the control register after writing it.',
    'Look at the data line with a scope: is it low while the sensor should drive it? Check for a solder bridge to ground.',
  ],
}

const ALL_ONES: Omit<Finding, 'evidence'> = {
  code: 'all-ones',
  title: 'All words are ones',
  seen: 'Every value is −1 (0xFFFF): nobody drives the data line, the pull-up does.',
  causes: [
    'The sensor does not answer: wrong address, or chip select is not pulled low.',
    'No supply at the sensor, or an open solder joint on the data line.',
    'Pull-ups are missing or far too strong for the line.',
  ],
  next: [
    'Measure the supply at the sensor and the level of chip select and of the address pin.',
    'Look for the acknowledge bit: the ninth clock after the address must find the line low.',
    'Measure from the pad to the pin with an ohmmeter, board unpowered.',
  ],
}
