import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { csvRecord, readCsv } from '../../../src/shared/format/csv'

const spectrum = dirname(createRequire(import.meta.url).resolve('csv-spectrum/package.json'))

/** The package's JSON of this file holds another number than its CSV; all else must be equal. */
const misprint: Record<string, Record<string, string>> = {
  'location_coordinates.csv': { 'Contact Phone Number': '1234567890' },
}

function fieldsOf(text: string): string[][] {
  const table = readCsv(text, 'log.csv')
  if (!table.ok) throw new Error(table.message)
  return table.value.map((row) => row.fields)
}

describe('readCsv', () => {
  for (const file of readdirSync(join(spectrum, 'csvs'))) {
    test(`reads ${file} of csv-spectrum 2.0.0 as its JSON says`, () => {
      const text = readFileSync(join(spectrum, 'csvs', file), 'utf8')
      const json = file.replace(/csv$/, 'json')
      const expected = JSON.parse(readFileSync(join(spectrum, 'json', json), 'utf8'))
      const [header = [], ...rows] = fieldsOf(text)
      const objects = rows.map((row) =>
        Object.fromEntries(header.map((column, index) => [column, row[index]])),
      )
      const read = Array.isArray(expected) ? objects : [{ ...objects[0], ...misprint[file] }]
      expect(read).toEqual(Array.isArray(expected) ? expected : [expected])
    })
  }

  test('reads doubled quotes and a line break inside a field (RFC 4180, 2.6 and 2.7)', () => {
    expect(fieldsOf('"""Hello CSV""","a\r\nb,c"')).toEqual([['"Hello CSV"', 'a\r\nb,c']])
  })

  test('keeps spaces, which RFC 4180 2.4 counts as part of a field', () => {
    expect(fieldsOf(' a , b\r\n')).toEqual([[' a ', ' b']])
  })

  test('passes over a byte order mark and a missing last line end', () => {
    expect(fieldsOf('\ufeffa,b\r\n1,2')).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ])
  })

  test('counts lines as an editor does, also past a field of two lines', () => {
    const table = readCsv('a,b\n"x\ny",2\n3,4\n', 'log.csv')
    expect(table.ok && table.value.map((row) => row.line)).toEqual([1, 3, 4])
  })

  test('names the row of a quote that is never closed', () => {
    const table = readCsv('a,b\n1,"2\n', 'log.csv')
    expect(table).toMatchObject({ ok: false, code: 'csv/quotes' })
    expect(!table.ok && table.message).toMatch(/^log\.csv, row \d+: a quotation mark/)
  })

  test('refuses a file without rows', () => {
    expect(readCsv('\r\n', 'log.csv')).toMatchObject({ ok: false, code: 'csv/empty' })
  })
})

test('what csvRecord writes, readCsv reads back, whatever the fields hold', () => {
  const record = fc.array(fc.string({ unit: 'binary' }), { minLength: 2, maxLength: 5 })
  fc.assert(
    fc.property(fc.array(record, { minLength: 1, maxLength: 5 }), (records) => {
      // A record is told from an empty line by its comma; a leading U+FEFF would be a BOM.
      fc.pre(!records[0]?.[0]?.startsWith('\ufeff'))
      expect(fieldsOf(records.map(csvRecord).join(''))).toEqual(records)
    }),
  )
})

test('a file is read the same whether a quotation mark somewhere makes it parsed in full or not', () => {
  const field = fc.string({ unit: fc.constantFrom('a', '1', ' ', ';', '\t', '.') })
  const record = fc.array(field, { minLength: 1, maxLength: 4 })
  const end = fc.constantFrom('\n', '\r\n')
  fc.assert(
    fc.property(fc.array(fc.tuple(record, end), { minLength: 1, maxLength: 6 }), (records) => {
      const text = records.map(([fields, lineEnd]) => fields.join(',') + lineEnd).join('')
      const plain = readCsv(`${text}last,row\n`, 'log.csv')
      const quoted = readCsv(`${text}last,"row"\n`, 'log.csv')
      expect(plain).toEqual(quoted)
    }),
  )
})

test('the npm package csv-parse reads the same fields from any text whose quotes pair up', () => {
  const piece = fc.constantFrom(
    'a',
    '1',
    ' ',
    ',',
    '\n',
    '\r\n',
    '"x"',
    '"x,y"',
    '"x""y"',
    '"\r\n"',
    '""',
  )
  const options = { record_delimiter: ['\r\n', '\n', '\r'], relax_column_count: true }
  fc.assert(
    fc.property(fc.array(piece, { minLength: 1, maxLength: 30 }), (pieces) => {
      const text = pieces.join('')
      let expected: string[][]
      try {
        expected = parse(text, { ...options, skip_empty_lines: true })
      } catch {
        return // Quotes inside a field that is not quoted, or text behind the closing one.
      }
      const read = readCsv(text, 'log.csv')
      if (expected.length === 0) expect(read).toMatchObject({ code: 'csv/empty' })
      else expect(read.ok && read.value.map(({ fields }) => fields)).toEqual(expected)
    }),
    { numRuns: 2000 },
  )
})
