import type { CsvMapping } from '../../format/csv-mapping'
import { MS_PER_UNIT } from '../../format/csv-mapping'
import { parseDecimal } from '../../format/decimal'
import { AXES } from '../../model/sample'
import { BOARD_LOG } from '../../words/en/board-log-trouble'
import { type BoardLog, LogBuilder, type LogClock } from './board-log'
import { MAX_LINE } from './line-splitter'
import { spacesToTabs } from './separators'

/** Microsecond counters of 32 bits begin anew after 71.6 minutes; millisecond ones after 49.7 days. */
const COUNTER_SPAN = 4_294_967_296
/** So far from either end of its span a counter has begun anew: 67 s of microseconds. */
const NEAR_END = COUNTER_SPAN / 64

/** A row whose time fell by more than half: what follows says why. */
interface DoubtfulRow {
  line: number
  time: number
  values: Float64Array
}

export interface RowReaderOptions {
  /** Called for a line without a time column when lines come live; gives ms on this clock. */
  arrivalMs?: () => number
}

/**
 * Reads lines as the mapping says, one by one. What cannot be read is noted with its line number and
 * left out; nothing else is lost by it. Empty lines and lines that start with '#' are comments.
 */
export class RowReader {
  readonly #mapping: CsvMapping
  readonly #builder: LogBuilder
  readonly #arrivalMs: (() => number) | null
  readonly #columnsNeeded: number
  readonly #row = new Float64Array(AXES)
  #line = 0
  #lastTime = Number.NEGATIVE_INFINITY
  #wrapped = 0
  #doubtful: DoubtfulRow | null = null

  constructor(mapping: CsvMapping, { arrivalMs }: RowReaderOptions = {}) {
    this.#mapping = mapping
    const used = [...mapping.accel.columns, ...(mapping.gyro?.columns ?? [])]
    if (mapping.time.kind === 'column') used.push(mapping.time.column)
    this.#columnsNeeded = Math.max(...used) + 1
    const live = mapping.time.kind === 'rate' && arrivalMs !== undefined
    this.#arrivalMs = live ? arrivalMs : null
    const clock: LogClock = live ? 'arrival' : 'board'
    this.#builder = new LogBuilder({
      accelUnit: mapping.accel.unit,
      gyroUnit: mapping.gyro?.unit ?? null,
      hasTime: live || mapping.time.kind === 'column',
      clock,
    })
  }

  get count(): number {
    return this.#builder.count
  }

  /** Adds one line. Returns whether it was a sample. */
  line(text: string): boolean {
    this.#line++
    const { headerRows } = this.#mapping
    const trimmed = text.trim()
    if (this.#line <= headerRows || trimmed === '' || trimmed.startsWith('#')) return false
    const problem = text.length > MAX_LINE ? BOARD_LOG.tooLong : this.#read(trimmed)
    if (problem === null) return true
    this.#builder.problem({ line: this.#line, what: problem })
    return false
  }

  build(): BoardLog {
    this.#settle(null)
    return this.#builder.build()
  }

  #read(text: string): string | null {
    const { delimiter, time, accel, gyro } = this.#mapping
    const fields = (delimiter === '\t' ? spacesToTabs(text) : text).split(delimiter)
    let bad: string | null = null
    const number = (column: number): number => {
      const field = unquoted(fields[column] ?? '')
      const value = parseDecimal(this.#mapping.decimalComma ? field.replace(',', '.') : field)
      if (value === null) bad ??= complaint(field, column, fields.length, this.#columnsNeeded)
      return value ?? 0
    }
    for (let axis = 0; axis < 3; axis++) {
      this.#row[axis] = number(accel.columns[axis] ?? 0)
      this.#row[axis + 3] = gyro === null ? 0 : number(gyro.columns[axis] ?? 0)
    }
    const told = time.kind === 'column' ? number(time.column) : null
    if (bad !== null) return bad
    if (told === null) this.#builder.add(this.#arrivalMs?.() ?? 0, this.#row)
    else this.#addTimed(told)
    return null
  }

  /** A lost digit at least halves a time, and only that one: such a row waits for the next. */
  #addTimed(time: number): void {
    this.#settle(time)
    if (this.#lastTime <= 0 || time >= this.#lastTime / 2) this.#add(time, this.#row)
    else this.#doubtful = { line: this.#line, time, values: this.#row.slice() }
  }

  /** Refuses the doubtful row when the next one goes on as if it were not there; else it stays. */
  #settle(nextTime: number | null): void {
    const row = this.#doubtful
    if (row === null) return
    this.#doubtful = null
    if (nextTime === null || nextTime < this.#lastTime) this.#add(row.time, row.values)
    else this.#builder.problem({ line: row.line, what: BOARD_LOG.timeAlone })
  }

  /** A counter that fell from near its end to near nought has begun anew; any other fall stays. */
  #add(time: number, values: Float64Array): void {
    const { time: from } = this.#mapping
    const isWrap = this.#lastTime >= COUNTER_SPAN - NEAR_END && time <= NEAR_END
    if (isWrap) this.#wrapped += COUNTER_SPAN
    this.#lastTime = time
    const unitMs = from.kind === 'column' ? MS_PER_UNIT[from.unit] : 1
    this.#builder.add((time + this.#wrapped) * unitMs, values)
  }
}

function unquoted(field: string): string {
  return field.trim().replace(/^"(.*)"$/, '$1')
}

function complaint(field: string, column: number, found: number, needed: number): string {
  if (column >= found) return BOARD_LOG.tooFewFields(found, needed)
  const shown = field.length > 20 ? `${field.slice(0, 20)}…` : field
  return BOARD_LOG.notANumber(column + 1, shown)
}
