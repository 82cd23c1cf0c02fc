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
    const tMs =
      time.kind === 'column'
        ? this.#unwrap(number(time.column)) * MS_PER_UNIT[time.unit]
        : (this.#arrivalMs?.() ?? 0)
    if (bad === null) this.#builder.add(tMs, this.#row)
    return bad
  }

  /** A counter that fell by more than half its span has begun anew; any other fall stays. */
  #unwrap(time: number): number {
    if (this.#lastTime - time > COUNTER_SPAN / 2) this.#wrapped += COUNTER_SPAN
    this.#lastTime = time
    return time + this.#wrapped
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
