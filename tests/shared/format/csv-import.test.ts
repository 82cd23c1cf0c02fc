import { describe, expect, test } from 'vitest'
import { readHeaderCell } from '../../../src/shared/format/csv-header'
import { applyMapping, previewCsv } from '../../../src/shared/format/csv-import'
import type { CsvMapping } from '../../../src/shared/format/csv-mapping'
import { TARGET } from './sample-library'

function preview(text: string) {
  const result = previewCsv(text, TARGET, 'log.csv')
  if (!result.ok) throw new Error(result.message)
  return result.value
}

function imported(text: string, change: Partial<CsvMapping> = {}) {
  const result = applyMapping(text, { ...preview(text).mapping, ...change }, 'log.csv')
  if (!result.ok) throw new Error(result.message)
  return { tMs: [...result.value.tMs], values: [...result.value.values] }
}

const f32 = (...values: number[]) => values.map(Math.fround)

describe('readHeaderCell', () => {
  const cells: [string, unknown][] = [
    ['t_ms', { kind: 'time', unit: 'ms' }],
    ['Time [s]', { kind: 'time', unit: 's' }],
    ['timestamp (µs)', { kind: 'time', unit: 'us' }],
    ['timestamp_ns', { kind: 'time', unit: 'ns' }],
    ['Nanos', { kind: 'time', unit: 'ns' }],
    ['t', { kind: 'time', unit: null }],
    ['ax_mps2', { kind: 'accel', axis: 0, unit: 'mps2' }],
    ['ay (g)', { kind: 'accel', axis: 1, unit: 'g' }],
    ['accel_z_g', { kind: 'accel', axis: 2, unit: 'g' }],
    ['AccX', { kind: 'accel', axis: 0, unit: null }],
    ['Acceleration y (m/s²)', { kind: 'accel', axis: 1, unit: 'mps2' }],
    ['acc z raw', { kind: 'accel', axis: 2, unit: 'count' }],
    ['gx', { kind: 'gyro', axis: 0, unit: null }],
    ['Gyro Y (deg/s)', { kind: 'gyro', axis: 1, unit: 'dps' }],
    ['gyroZ_rad/s', { kind: 'gyro', axis: 2, unit: 'radps' }],
    ['wx [°/s]', { kind: 'gyro', axis: 0, unit: 'dps' }],
    ['temperature', null],
    ['mx', null],
    ['label', null],
  ]
  for (const [cell, meaning] of cells) {
    test(`"${cell}" is ${JSON.stringify(meaning)}`, () => {
      expect(readHeaderCell(cell)).toEqual(meaning)
    })
  }
})

describe('a plain log', () => {
  test('with units in its header is read in SI units', () => {
    const text =
      'time (s),ax (g),ay (g),az (g),gx (rad/s),gy (rad/s),gz (rad/s)\n5,0,0,1,1,0,0\n5.01,0.5,0,1,0,-1,0\n'
    const { tMs, values } = imported(text)
    expect(tMs[1]).toBeCloseTo(10, 9)
    // 1 g is 9.80665 m/s² (3rd CGPM, 1901); 1 rad is 180/pi degrees.
    expect(values).toEqual([
      ...f32(0, 0, 9.80665, 180 / Math.PI, 0, 0),
      ...f32(0.5 * 9.80665, 0, 9.80665, 0, -180 / Math.PI, 0),
    ])
  })

  test('in counts uses the sensitivity of the target: 8197 counts of 0.122 mg are 1 g', () => {
    const text =
      't_us,acc_x_raw,acc_y_raw,acc_z_raw,gyro_x_raw,gyro_y_raw,gyro_z_raw\n0,0,0,8197,0,0,0\n9615,0,0,8197,5714,0,0\n'
    const { values } = imported(text)
    expect(values[2]).toBeCloseTo(9.807, 2)
    // 5714 counts of 17.5 mdps are 100 deg/s.
    expect(values[9]).toBeCloseTo(100, 1)
  })

  test('in nanoseconds is read so, by its header or by its steps, also since 1970', () => {
    for (const head of ['timestamp_ns,ax_g,ay_g,az_g\n', 'timestamp,ax_g,ay_g,az_g\n', '']) {
      for (const first of [123_456_789_000_000n, 1_795_600_000_000_000_000n]) {
        for (const stepMs of [1, 16, 100]) {
          const at = (n: number) => first + BigInt(n * stepMs * 1_000_000)
          const text = head + Array.from({ length: 50 }, (_, n) => `${at(n)},0,0,1`).join('\n')
          expect(preview(text).mapping.time).toEqual({ kind: 'column', column: 0, unit: 'ns' })
          expect(imported(text).tMs.at(-1)).toBeCloseTo(49 * stepMs, 2)
        }
      }
    }
  })

  test('without a header is guessed by its numbers, and says so', () => {
    const rows = Array.from({ length: 20 }, (_, n) => `${n * 16},0.1,9.8,0.2,${n % 3},0,1`)
    const found = preview(rows.join('\n'))
    expect(found.header).toBeNull()
    expect(found.mapping).toMatchObject({
      headerRows: 0,
      time: { kind: 'column', column: 0, unit: 'ms' },
      accel: { columns: [1, 2, 3], unit: 'mps2' },
      gyro: { columns: [4, 5, 6], unit: 'dps' },
    })
    expect(found.notes.join()).toContain('no header')
  })

  test('without time offers the rate of the target', () => {
    const text = 'ax,ay,az\n0,0,1\n0,0,1\n'
    expect(preview(text).mapping).toMatchObject({
      time: { kind: 'rate', rateHz: 104 },
      accel: { unit: 'g' },
      gyro: null,
    })
    const read = imported(text, { time: { kind: 'rate', rateHz: 50 } })
    expect(read.tMs).toEqual([0, 20])
    expect(read.values.slice(3, 6)).toEqual([0, 0, 0])
  })

  test('with semicolons and decimal commas, as a spreadsheet may write it, is understood', () => {
    const text = '\ufefft_ms;ax_g;ay_g;az_g\r\n0;0,5;0;-1,25\r\n10;0;0;1\r\n'
    expect(preview(text).mapping).toMatchObject({ delimiter: ';', decimalComma: true })
    expect(imported(text).values.slice(0, 3)).toEqual(f32(0.5 * 9.80665, 0, -1.25 * 9.80665))
  })

  test('with extra lines above and columns in another order is read by the header', () => {
    const text =
      'Bench log\nlabel,gz_dps,gy_dps,gx_dps,az_g,ay_g,ax_g,t_ms\nraise,1,2,3,4,5,6,0\nraise,1,2,3,4,5,6,9\n'
    const { mapping } = preview(text)
    expect(mapping).toMatchObject({
      headerRows: 2,
      time: { kind: 'column', column: 7, unit: 'ms' },
      accel: { columns: [6, 5, 4] },
      gyro: { columns: [3, 2, 1] },
    })
    expect(imported(text).values.slice(3, 6)).toEqual([3, 2, 1])
  })

  test('shows its first rows and counts all', () => {
    const rows = Array.from({ length: 50 }, (_, n) => `${n},0,0,1`)
    const found = preview(`t_ms,ax_g,ay_g,az_g\n${rows.join('\n')}`)
    expect([found.rows.length, found.rowCount, found.columnCount]).toEqual([8, 50, 4])
    expect(found.rows[0]).toEqual(['0', '0', '0', '1'])
  })
})

describe('a plain log is refused', () => {
  const HEADER = 't_ms,ax_g,ay_g,az_g\n'
  function refusal(text: string, change: Partial<CsvMapping> = {}): string {
    const { mapping } = preview(`${HEADER}0,0,0,1\n1,0,0,1\n`)
    const result = applyMapping(text, { ...mapping, ...change }, 'log.csv')
    return result.ok ? 'read' : `${result.code}: ${result.message}`
  }

  test('when a time appears twice', () => {
    expect(refusal(`${HEADER}0,0,0,1\n10,0,0,1\n10,0,0,1\n`)).toMatch(
      /^csv\/time-twice: log\.csv, row 4 has the same time .*10 ms/,
    )
  })

  test('when time goes back', () => {
    expect(refusal(`${HEADER}0,0,0,1\n10,0,0,1\n5,0,0,1\n`)).toMatch(
      /^csv\/time-order: log\.csv, row 4: time goes back from 10 ms to 5 ms/,
    )
  })

  test('when a field is no number, naming the column by its header', () => {
    expect(refusal(`${HEADER}0,0,0,1\n10,0,nan,1\n`)).toBe(
      'csv/number: log.csv, row 3, column ay_g: "nan" is not a finite number.',
    )
  })

  test('when a row is short', () => {
    expect(refusal(`${HEADER}0,0,0,1\n10,0\n`)).toMatch(
      /^csv\/short-row: log\.csv, row 3 has 2 of 4/,
    )
  })

  test('when the mapping uses a column twice or one that is not there', () => {
    const accel = { unit: 'g' as const, nanoPerLsb: 0 }
    const text = `${HEADER}0,0,0,1\n`
    expect(refusal(text, { accel: { ...accel, columns: [1, 1, 3] } })).toMatch(
      /^csv\/mapping.*twice/,
    )
    expect(refusal(text, { accel: { ...accel, columns: [1, 2, 9] } })).toMatch(
      /^csv\/mapping.*4 there/,
    )
    expect(refusal(text, { accel: { ...accel, unit: 'count', columns: [1, 2, 3] } })).toMatch(
      /^csv\/mapping.*sensitivity/,
    )
    expect(refusal(text, { time: { kind: 'rate', rateHz: 0 } })).toMatch(/^csv\/mapping.*rate/)
  })

  test('when it has no numbers, or too few columns', () => {
    expect(previewCsv('hello', null)).toMatchObject({ ok: false, code: 'csv/columns' })
    expect(previewCsv('1,2\n3,4\n', null)).toMatchObject({ ok: false, code: 'csv/columns' })
  })
})
