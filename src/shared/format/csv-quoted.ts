import { fail, ok, type Result } from '../model/result'
import { CSV_TROUBLE } from '../words/en/csv-trouble'
import type { CsvRow, Delimiter } from './csv'

interface Field {
  value: string
  /** Where the delimiter, the line break or the end of the text stands. */
  end: number
}

const BREAK = /\r\n|\n|\r/g

/** Rows of a text with quotation marks: RFC 4180, 2.5 to 2.7. Empty lines are passed over. */
export function splitQuoted(text: string, file: string, delimiter: Delimiter): Result<CsvRow[]> {
  const rows: CsvRow[] = []
  let fields: string[] = []
  let line = 1
  let at = text.startsWith('\ufeff') ? 1 : 0
  let start = at
  for (;;) {
    const field = text[at] === '"' ? quoted(text, at, delimiter) : plain(text, at, delimiter)
    if (field === null) return neverClosed(file, line)
    fields.push(field.value)
    line += text.slice(at, field.end).match(BREAK)?.length ?? 0
    at = field.end
    if (text[at] === delimiter) {
      at++
      continue
    }
    if (at > start) rows.push({ line, fields })
    if (at >= text.length) return ok(rows)
    at += text.startsWith('\r\n', at) ? 2 : 1
    line++
    start = at
    fields = []
  }
}

function plain(text: string, at: number, delimiter: Delimiter): Field {
  let end = at
  while (end < text.length && !isEnd(text[end], delimiter)) end++
  return { value: text.slice(at, end), end }
}

/** A field in quotation marks; with more behind the closing one, it is taken as it stands. */
function quoted(text: string, at: number, delimiter: Delimiter): Field | null {
  let close = text.indexOf('"', at + 1)
  while (close >= 0 && text[close + 1] === '"') close = text.indexOf('"', close + 2)
  if (close < 0) return null
  const { end } = plain(text, close + 1, delimiter)
  if (end > close + 1) return { value: text.slice(at, end), end }
  return { value: text.slice(at + 1, close).replaceAll('""', '"'), end }
}

function isEnd(character: string | undefined, delimiter: Delimiter): boolean {
  return character === delimiter || character === '\n' || character === '\r'
}

function neverClosed(file: string, line: number): Result<never> {
  return fail('csv/quotes', CSV_TROUBLE.quoteOpen(file, line))
}
