import { type Failure, fail, ok, type Result } from '../model/result'
import { AXES, type SampleBlock, sampleCount } from '../model/sample'
import { CSV_TROUBLE } from '../words/en/csv-trouble'
import { type CsvRow, csvRecord, readCsv } from './csv'
import { doubleText, float32Text, hasDecimalComma, parseDecimal } from './decimal'

/** Columns of a recording: time, accelerometer with gravity, gyroscope; units in the names. */
export const SAMPLE_COLUMNS = [
  't_ms',
  'ax_mps2',
  'ay_mps2',
  'az_mps2',
  'gx_dps',
  'gy_dps',
  'gz_dps',
] as const

/**
 * A recording as CSV, one row a sample. Numbers have as many digits as it takes to read them back
 * bit for bit.
 * @throws RangeError when a value is not finite: such a recording cannot be written
 */
export function writeSamplesCsv(block: SampleBlock): string {
  const rows: string[] = [csvRecord(SAMPLE_COLUMNS)]
  for (let n = 0; n < sampleCount(block); n++) {
    const fields = [doubleText(block.tMs[n] ?? Number.NaN)]
    for (let axis = 0; axis < AXES; axis++) {
      fields.push(float32Text(block.values[n * AXES + axis] ?? Number.NaN))
    }
    if (fields.some((field) => parseDecimal(field) === null)) {
      throw new RangeError(`Sample ${n} holds a value that is not a finite number.`)
    }
    rows.push(csvRecord(fields))
  }
  return rows.join('')
}

/**
 * Reads what `writeSamplesCsv` wrote.
 * @param file name for messages
 * @returns failures 'csv/header', 'csv/short-row', 'csv/long-row', 'csv/number',
 *   'csv/decimal-comma', 'csv/time-order', and those of `readCsv`; each names file, row, column
 */
export function readSamplesCsv(text: string, file: string): Result<SampleBlock> {
  const table = readCsv(text, file)
  if (!table.ok) return table
  const [header, ...rows] = table.value
  const expected = SAMPLE_COLUMNS.join(',')
  if (header === undefined || header.fields.join(',') !== expected) {
    return fail('csv/header', CSV_TROUBLE.header(file, expected))
  }
  return readRows(rows, file)
}

function readRows(rows: CsvRow[], file: string): Result<SampleBlock> {
  const block: SampleBlock = {
    tMs: new Float64Array(rows.length),
    values: new Float32Array(rows.length * AXES),
  }
  for (const [n, row] of rows.entries()) {
    const length = checkRowLength(row, SAMPLE_COLUMNS.length, file)
    if (!length.ok) return length
    for (const [column, name] of SAMPLE_COLUMNS.entries()) {
      const value = readField(row, column, name, file)
      if (!value.ok) return value
      if (column === 0) {
        block.tMs[n] = value.value
        continue
      }
      if (!isStorable(value.value)) return tooLarge(row, name, file)
      block.values[n * AXES + column - 1] = value.value
    }
    const order = checkTimeOrder(block.tMs, n, row.line, file)
    if (!order.ok) return order
  }
  return ok(block)
}

/** Refuses a row that has more or fewer fields than there are columns. */
export function checkRowLength(row: CsvRow, columns: number, file: string): Result<null> {
  const found = row.fields.length
  if (found === columns) return ok(null)
  if (found < columns) {
    return fail('csv/short-row', CSV_TROUBLE.shortRow({ file, row: row.line, found, columns }))
  }
  return fail('csv/long-row', CSV_TROUBLE.longRow({ file, row: row.line, found, columns }))
}

/** The number in one field, or a failure that says where and what stands there instead. */
export function readField(
  row: CsvRow,
  column: number,
  columnName: string,
  file: string,
): Result<number> {
  const field = row.fields[column] ?? ''
  const value = parseDecimal(field)
  if (value !== null) return ok(value)
  const place = { file, row: row.line, column: columnName }
  if (hasDecimalComma(field)) {
    return fail('csv/decimal-comma', CSV_TROUBLE.decimalComma(place, field))
  }
  if (field.trim() === '') {
    return fail('csv/number', CSV_TROUBLE.empty(place))
  }
  return fail('csv/number', CSV_TROUBLE.notFinite(place, shorten(field)))
}

/** Whether a reading keeps a finite value as float32, as samples are stored. */
export function isStorable(value: number): boolean {
  return Number.isFinite(Math.fround(value))
}

export function tooLarge(row: CsvRow, columnName: string, file: string): Failure {
  return fail('csv/number', CSV_TROUBLE.tooLarge({ file, row: row.line, column: columnName }))
}

/** Time may stand still but not go back. */
function checkTimeOrder(tMs: Float64Array, n: number, line: number, file: string): Result<null> {
  const now = tMs[n] ?? 0
  const before = n === 0 ? now : (tMs[n - 1] ?? 0)
  if (now >= before) return ok(null)
  return fail(
    'csv/time-order',
    CSV_TROUBLE.timeOrder({ file, row: line, beforeMs: before, nowMs: now }),
  )
}

function shorten(field: string): string {
  return field.length > 24 ? `${field.slice(0, 24)}…` : field
}
