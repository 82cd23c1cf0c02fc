import { fail, ok, type Result } from '../model/result'
import { AXES, type SampleBlock, STANDARD_GRAVITY_MPS2 } from '../model/sample'
import { CSV_TROUBLE } from '../words/en/csv-trouble'
import { type CsvRow, readCsv } from './csv'
import { type AccelMapping, type CsvMapping, type GyroMapping, MS_PER_UNIT } from './csv-mapping'
import { checkRowLength, isStorable, readField, tooLarge } from './samples-csv'

export { type CsvPreview, previewCsv } from './csv-preview'

/**
 * Reads a plain log as the mapping says. Time starts at 0 with the first row.
 * @param file name for messages
 * @returns failures 'csv/mapping', 'csv/time-order', 'csv/time-twice', and those of
 *   `readSamplesCsv` for fields; each names row and column
 */
export function applyMapping(
  text: string,
  mapping: CsvMapping,
  file = CSV_TROUBLE.theFile,
): Result<SampleBlock> {
  const table = readCsv(text, file, mapping.delimiter)
  if (!table.ok) return table
  const names = table.value[mapping.headerRows - 1]?.fields ?? []
  const rows = table.value.slice(mapping.headerRows)
  const width = rows[0]?.fields.length ?? 0
  const problem = mappingProblem(mapping, width, file)
  if (problem !== null) return fail('csv/mapping', problem)
  const reader = new LogReader(mapping, names, file)
  const block = { tMs: new Float64Array(rows.length), values: new Float32Array(rows.length * AXES) }
  for (const [n, row] of rows.entries()) {
    const length = checkRowLength(row, width, file)
    if (!length.ok) return length
    const read = reader.readRow(row, n, block)
    if (!read.ok) return read
  }
  return ok(block)
}

/** Turns the fields of one row after the other into a sample in SI units. */
class LogReader {
  private firstMs = 0
  private readonly accelScale: number
  private readonly gyroScale: number

  constructor(
    private readonly mapping: CsvMapping,
    private readonly names: string[],
    private readonly file: string,
  ) {
    this.accelScale = accelScale(mapping.accel)
    this.gyroScale = mapping.gyro ? gyroScale(mapping.gyro) : 0
  }

  readRow(row: CsvRow, n: number, block: SampleBlock): Result<null> {
    const time = this.readTime(row, n, block.tMs)
    if (!time.ok) return time
    const { accel, gyro } = this.mapping
    for (let axis = 0; axis < 3; axis++) {
      const a = this.reading(row, accel.columns[axis] ?? 0, this.accelScale)
      if (!a.ok) return a
      block.values[n * AXES + axis] = a.value
      if (gyro === null) continue
      const w = this.reading(row, gyro.columns[axis] ?? 0, this.gyroScale)
      if (!w.ok) return w
      block.values[n * AXES + 3 + axis] = w.value
    }
    return ok(null)
  }

  private readTime(row: CsvRow, n: number, tMs: Float64Array): Result<null> {
    const { time } = this.mapping
    if (time.kind === 'rate') {
      tMs[n] = (n * 1000) / time.rateHz
      return ok(null)
    }
    const read = this.number(row, time.column)
    if (!read.ok) return read
    const ms = read.value * MS_PER_UNIT[time.unit]
    if (n === 0) this.firstMs = ms
    tMs[n] = ms - this.firstMs
    return n === 0 ? ok(null) : this.checkOrder(row, tMs[n] ?? 0, tMs[n - 1] ?? 0)
  }

  private checkOrder(row: CsvRow, nowMs: number, beforeMs: number): Result<null> {
    if (nowMs > beforeMs) return ok(null)
    if (nowMs === beforeMs) {
      return fail('csv/time-twice', CSV_TROUBLE.timeTwice(this.file, row.line, nowMs))
    }
    return fail(
      'csv/time-order',
      CSV_TROUBLE.timeBack({ file: this.file, row: row.line, beforeMs, nowMs }),
    )
  }

  private nameOf(column: number): string {
    return this.names[column]?.trim() || String(column + 1)
  }

  private reading(row: CsvRow, column: number, scale: number): Result<number> {
    const read = this.number(row, column)
    if (!read.ok || isStorable(read.value * scale)) {
      return read.ok ? ok(read.value * scale) : read
    }
    return tooLarge(row, this.nameOf(column), this.file)
  }

  private number(row: CsvRow, column: number): Result<number> {
    const name = this.nameOf(column)
    if (!this.mapping.decimalComma) return readField(row, column, name, this.file)
    const fields = row.fields.map((field) => field.replace(',', '.'))
    return readField({ line: row.line, fields }, column, name, this.file)
  }
}

function accelScale(accel: AccelMapping): number {
  const perG = { g: 1, mg: 1e-3, count: accel.nanoPerLsb * 1e-9 }
  return accel.unit === 'mps2' ? 1 : STANDARD_GRAVITY_MPS2 * perG[accel.unit]
}

function gyroScale(gyro: GyroMapping): number {
  return { dps: 1, mdps: 1e-3, radps: 180 / Math.PI, count: gyro.nanoPerLsb * 1e-9 }[gyro.unit]
}

function mappingProblem(mapping: CsvMapping, width: number, file: string): string | null {
  const { time, accel, gyro } = mapping
  const used = [...accel.columns, ...(gyro?.columns ?? [])]
  if (time.kind === 'column') used.push(time.column)
  if (used.some((column) => !Number.isInteger(column) || column < 0 || column >= width)) {
    return CSV_TROUBLE.noSuchColumn(file, width)
  }
  if (new Set(used).size !== used.length) {
    return CSV_TROUBLE.columnTwice(file)
  }
  if (time.kind === 'rate' && !(time.rateHz > 0 && time.rateHz <= 10_000)) {
    return CSV_TROUBLE.rate(file)
  }
  const scales = [accelScale(accel), gyro ? gyroScale(gyro) : 1]
  if (scales.some((scale) => !(scale > 0 && Number.isFinite(scale)))) {
    return CSV_TROUBLE.sensitivity(file)
  }
  return null
}
