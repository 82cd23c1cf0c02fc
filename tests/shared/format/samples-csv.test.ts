import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { float32Text } from '../../../src/shared/format/decimal'
import { readSamplesCsv, writeSamplesCsv } from '../../../src/shared/format/samples-csv'
import { awkwardBlock } from './sample-library'

const HEADER = 't_ms,ax_mps2,ay_mps2,az_mps2,gx_dps,gy_dps,gz_dps\r\n'

function refusal(rows: string): string {
  const result = readSamplesCsv(HEADER + rows, 'takes/raise/A1_001.csv')
  if (result.ok) throw new Error('was read')
  return `${result.code}: ${result.message}`
}

describe('float32Text', () => {
  test('reads back as the same float32, for every bit pattern that is a number', () => {
    fc.assert(
      fc.property(fc.float({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(Object.is(Math.fround(Number(float32Text(value))), value)).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })

  test('writes readings rounded to a tenth with one decimal', () => {
    expect([0.1, -9.8, 123.4].map((x) => float32Text(Math.fround(x)))).toEqual([
      '0.1',
      '-9.8',
      '123.4',
    ])
  })

  test('writes fround(9.80665) = 9.806650161743164 as 9.80665 (IEEE 754 binary32)', () => {
    expect(float32Text(9.806650161743164)).toBe('9.80665')
  })
})

describe('samples as CSV', () => {
  test('has units in its header and CRLF after every row', () => {
    const text = writeSamplesCsv({ tMs: Float64Array.of(0, 16.5), values: new Float32Array(12) })
    expect(text).toBe(`${HEADER}0,0,0,0,0,0,0\r\n16.5,0,0,0,0,0,0\r\n`)
  })

  test('keeps every bit of samples and times', () => {
    const block = awkwardBlock(40)
    const read = readSamplesCsv(writeSamplesCsv(block), 'a.csv')
    if (!read.ok) throw new Error(read.message)
    expect(new Uint8Array(read.value.values.buffer)).toEqual(new Uint8Array(block.values.buffer))
    expect(new Uint8Array(read.value.tMs.buffer)).toEqual(new Uint8Array(block.tMs.buffer))
  })

  test('is not written when a value is not a number', () => {
    const block = awkwardBlock(3)
    block.values[7] = Number.NaN
    expect(() => writeSamplesCsv(block)).toThrow('Sample 1 holds a value')
  })

  test('a byte order mark, as spreadsheets write it, does no harm', () => {
    expect(readSamplesCsv(`\ufeff${HEADER}0,1,2,3,4,5,6`, 'a.csv')).toMatchObject({ ok: true })
  })

  test('a wrong header is refused with the header that is due', () => {
    const result = readSamplesCsv('t,ax\r\n0,1\r\n', 'a.csv')
    expect(result).toMatchObject({ ok: false, code: 'csv/header' })
  })

  test('a short row is named', () => {
    expect(refusal('0,1,2,3,4,5,6\r\n10,1,2\r\n')).toBe(
      'csv/short-row: takes/raise/A1_001.csv, row 3 has 3 of 7 fields. The file may have been cut off; complete or delete the row.',
    )
  })

  test('a decimal comma in quotes is named as such', () => {
    expect(refusal('0,"9,81",2,3,4,5,6')).toBe(
      'csv/decimal-comma: takes/raise/A1_001.csv, row 2, column ax_mps2: "9,81" has a decimal comma. Write numbers with a decimal point.',
    )
  })

  test('bare decimal commas double the fields, and the sentence says so', () => {
    expect(refusal('0,0,9,8,0,1,0,2,1,0,2,0,3,0')).toMatch(/row 2 has 14 fields.*decimal comma/)
  })

  for (const bad of [
    'NaN',
    'Infinity',
    '-inf',
    '1e999',
    '1e39',
    '0x1f',
    '',
    'abc',
    '1 2',
    '1.2.3',
    '=1+1',
  ]) {
    test(`"${bad}" is not taken for a number`, () => {
      expect(refusal(`0,1,2,3,4,5,6\r\n1,1,2,3,4,${bad},6`)).toMatch(
        /^csv\/number: takes\/raise\/A1_001\.csv, row 3, column gy_dps/,
      )
    })
  }

  test('time that goes back is named', () => {
    expect(refusal('0,1,2,3,4,5,6\r\n20,1,2,3,4,5,6\r\n10,1,2,3,4,5,6')).toMatch(
      /^csv\/time-order: takes\/raise\/A1_001\.csv, row 4: time goes back from 20 ms to 10 ms/,
    )
  })
})
