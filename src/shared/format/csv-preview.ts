import { fail, ok, type Result } from '../model/result'
import type { Target } from '../model/target'
import { CSV_TROUBLE } from '../words/en/csv-trouble'
import { type Delimiter, readCsv } from './csv'
import { guessColumns } from './csv-guess'
import type { CsvMapping } from './csv-mapping'
import { hasDecimalComma, parseDecimal } from './decimal'

/** Rows shown to the person who maps the columns. */
const PREVIEW_ROWS = 8
/** Rows that guesses are made from. */
const GUESS_ROWS = 300

/** A plain log before it is imported: what is in it and what it seems to mean. */
export interface CsvPreview {
  /** Names of the columns, or null when the first row is already numbers. */
  header: string[] | null
  columnCount: number
  /** First rows of samples as they stand in the file. */
  rows: string[][]
  rowCount: number
  /** What the columns seem to mean, to be changed by the person. */
  mapping: CsvMapping
  /** Sentences on what was guessed and deserves a look. */
  notes: string[]
}

/**
 * Looks into a plain log.
 * @param target whose sensitivities and rate are offered, or null
 * @param file name for messages
 * @returns failures 'csv/columns' with fewer than three number columns, and those of `readCsv`
 */
export function previewCsv(
  text: string,
  target: Target | null,
  file = CSV_TROUBLE.theFile,
): Result<CsvPreview> {
  const delimiter = guessDelimiter(text)
  const table = readCsv(text, file, delimiter)
  if (!table.ok) return table
  const decimalComma =
    delimiter !== ',' && table.value.some((row) => row.fields.some(hasDecimalComma))
  const number = (field: string) => parseNumber(field, decimalComma)
  const isSample = (fields: string[]) => fields.filter((f) => number(f) !== null).length >= 3
  const first = table.value.findIndex((row) => isSample(row.fields))
  if (first < 0) {
    return fail('csv/columns', CSV_TROUBLE.noNumbers(file))
  }
  const rows = table.value.slice(first).map((row) => row.fields)
  const columnCount = rows[0]?.length ?? 0
  const header = first === 0 ? null : (table.value[first - 1]?.fields ?? null)
  const columns = Array.from({ length: columnCount }, (_, column) =>
    rows.slice(0, GUESS_ROWS).map((row) => number(row[column] ?? '') ?? Number.NaN),
  )
  const { time, accel, gyro } = guessColumns({ header, columns }, target)
  if (accel === null) {
    return fail('csv/columns', CSV_TROUBLE.noAccelerometer(file, columnCount))
  }
  const mapping = { delimiter, decimalComma, headerRows: first, time, accel, gyro }
  return ok({
    header,
    columnCount,
    rows: rows.slice(0, PREVIEW_ROWS),
    rowCount: rows.length,
    mapping,
    notes: notesOn(mapping, header),
  })
}

function guessDelimiter(text: string): Delimiter {
  const start = text.slice(0, 4000)
  const count = (character: string) => start.split(character).length - 1
  if (count('\t') > 0 && count('\t') >= count(';')) return '\t'
  return count(';') > 0 ? ';' : ','
}

function parseNumber(field: string, decimalComma: boolean): number | null {
  return parseDecimal(decimalComma ? field.replace(',', '.') : field)
}

function notesOn(mapping: Omit<CsvMapping, 'delimiter'>, header: string[] | null): string[] {
  const notes: string[] = []
  if (header === null) notes.push(CSV_TROUBLE.noHeader)
  if (mapping.time.kind === 'rate') {
    notes.push(CSV_TROUBLE.noTime)
  }
  if (mapping.gyro === null) notes.push(CSV_TROUBLE.noGyro)
  if (mapping.accel.unit === 'count') {
    notes.push(CSV_TROUBLE.inCounts)
  }
  return notes
}
