import { type CsvPreview, previewCsv } from '../../format/csv-import'
import type { CsvMapping } from '../../format/csv-mapping'
import { fail, ok, type Result } from '../../model/result'
import type { Target } from '../../model/target'
import { BOARD_LOG } from '../../words/en/board-log-trouble'
import { type BoardLog, rowCount } from './board-log'
import { LineSplitter } from './line-splitter'
import { RowReader } from './row-reader'
import { spacesToTabs } from './separators'

/** As many rows as are read of one log; at 100 Hz it is nearly three hours. */
export const MAX_ROWS = 1_000_000
/** Characters of a log that the guess looks at. */
export const PREVIEW_CHARACTERS = 65_536

/**
 * What the columns of a log most likely mean. Columns may be set apart by commas, semicolons, tabs
 * or spaces; a header is optional. Lines that begin with '#' are left out.
 * Codes: those of previewCsv.
 */
export function previewLog(
  text: string,
  target: Target,
  name = BOARD_LOG.theLog,
): Result<CsvPreview> {
  const start = text.slice(0, PREVIEW_CHARACTERS)
  // A line that the cut went through would look like a short row.
  const whole = start.length < text.length ? start.slice(0, start.lastIndexOf('\n') + 1) : start
  const { kept, dropped } = withoutComments(whole)
  const preview = previewCsv(spacesToTabs(kept), target, name)
  if (!preview.ok) return preview
  const { mapping } = preview.value
  return ok({
    ...preview.value,
    mapping: {
      ...mapping,
      headerRows: mapping.headerRows === 0 ? 0 : mapping.headerRows + dropped,
    },
  })
}

/** Comments before the first reading count as header rows for the reader of lines. */
function withoutComments(text: string): { kept: string; dropped: number } {
  const lines = text.split(/\r\n|\n|\r/)
  const isIdle = (line: string) => line.trim() === '' || line.trimStart().startsWith('#')
  const firstRow = lines.findIndex(
    (line) => !isIdle(line) && /\d/.test(line) && !/[a-df-z]/i.test(line),
  )
  const head = firstRow < 0 ? lines : lines.slice(0, firstRow)
  return {
    kept: lines.filter((line) => !isIdle(line)).join('\n'),
    dropped: head.filter(isIdle).length,
  }
}

export interface ReadLogOptions {
  /** Called now and then with the characters read so far. */
  onProgress?: (characters: number) => void
  /** Asked between pieces; true ends the reading with what was read. */
  shouldStop?: () => boolean
  name?: string
}

export interface ReadLog {
  log: BoardLog
  /** The end was not reached: stopped, failed on the way, or more rows than MAX_ROWS. */
  cut: 'stopped' | 'too-long' | 'broken' | null
}

/**
 * Reads a log piece by piece, so that its size does not matter. What was read before an end, a stop
 * or a failure of the source stays.
 * Codes: 'log/no-rows' when no line could be read.
 */
export async function readLog(
  pieces: AsyncIterable<string>,
  mapping: CsvMapping,
  { onProgress, shouldStop, name = BOARD_LOG.theLog }: ReadLogOptions = {},
): Promise<Result<ReadLog>> {
  const splitter = new LineSplitter()
  const reader = new RowReader(mapping)
  let cut: ReadLog['cut'] = null
  let characters = 0
  try {
    for await (const piece of pieces) {
      for (const line of splitter.push(piece.replace(/^\ufeff/, ''))) reader.line(line)
      characters += piece.length
      onProgress?.(characters)
      if (reader.count >= MAX_ROWS) cut = 'too-long'
      else if (shouldStop?.()) cut = 'stopped'
      if (cut !== null) break
    }
  } catch {
    cut = 'broken'
  }
  if (cut === null) reader.line(splitter.flush())
  const log = reader.build()
  if (rowCount(log) > 0) return ok({ log, cut })
  return fail('log/no-rows', BOARD_LOG.noRows(name, log.problems[0] ?? null))
}

/** The same for text at hand, such as pasted. */
export function readLogText(
  text: string,
  mapping: CsvMapping,
  name?: string,
): Promise<Result<ReadLog>> {
  async function* pieces() {
    yield text
  }
  return readLog(pieces(), mapping, name === undefined ? {} : { name })
}
