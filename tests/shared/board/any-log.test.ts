import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkBoard } from '../../../src/shared/board/check/check-board'
import { BENCH_STEPS, type BenchPart, FREE_STEP } from '../../../src/shared/board/check/steps'
import { RowReader } from '../../../src/shared/board/log/row-reader'
import { AXES } from '../../../src/shared/model/sample'
import { defaultTarget } from '../../../src/shared/target/default-target'

const target = defaultTarget()
const steps = [...BENCH_STEPS, FREE_STEP].map(({ id }) => id)
const word = fc.oneof(
  fc.integer({ min: -32768, max: 65535 }),
  fc.constantFrom(0, -1, 4098, 1e9, 0.5),
)

const part = fc
  .record({
    step: fc.constantFrom(...steps),
    row: fc.array(word, { minLength: AXES, maxLength: AXES }),
    wobble: fc.integer({ min: 0, max: 3 }),
    count: fc.integer({ min: 0, max: 300 }),
    stepMs: fc.oneof(fc.constant(null), fc.constantFrom(0, -5, 1, 19.23, 1e7)),
    gyro: fc.boolean(),
    unit: fc.constantFrom('count' as const, 'g' as const, 'mg' as const, 'mps2' as const),
  })
  .map(({ step, row, wobble, count, stepMs, gyro, unit }): BenchPart => {
    const values = Float64Array.from({ length: AXES * count }, (_, i) => {
      const axis = i % AXES
      return axis >= 3 && !gyro ? 0 : row[axis]! + ((i * 7919) % (wobble + 1))
    })
    const tMs = stepMs === null ? null : Float64Array.from({ length: count }, (_, i) => i * stepMs)
    const gyroUnit = gyro ? (unit === 'count' ? ('count' as const) : ('dps' as const)) : null
    return {
      step,
      log: {
        values,
        accelUnit: unit,
        gyroUnit,
        tMs,
        clock: 'board',
        problems: [],
        problemCount: 0,
      },
    }
  })

describe('the board check over any log', () => {
  it('answers in sentences without NaN, whatever was printed', () => {
    fc.assert(
      fc.property(fc.uniqueArray(part, { maxLength: 8, selector: ({ step }) => step }), (parts) => {
        const { findings } = checkBoard(parts, target)
        for (const { seen, evidence } of findings) {
          expect(seen).not.toMatch(/NaN|undefined|Infinity/)
          if (evidence.kind === 'spectrum')
            expect(evidence.levels.every(Number.isFinite)).toBe(true)
          if (evidence.kind === 'trace') {
            expect(evidence.lines.every(({ values }) => values.every(Number.isFinite))).toBe(true)
          }
        }
      }),
      { numRuns: 400 },
    )
  })
})

describe('the row reader over any line', () => {
  it('takes a line or names what is wrong with it, and never throws', () => {
    const mapping = {
      delimiter: ',' as const,
      decimalComma: false,
      headerRows: 0,
      time: { kind: 'rate' as const, rateHz: 52 },
      accel: {
        columns: [0, 1, 2] as [number, number, number],
        unit: 'count' as const,
        nanoPerLsb: 1,
      },
      gyro: {
        columns: [3, 4, 5] as [number, number, number],
        unit: 'count' as const,
        nanoPerLsb: 1,
      },
    }
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.string({ unit: 'binary' }), fc.constant('1,2,3,4,5,6'))),
        (lines) => {
          const reader = new RowReader(mapping)
          const taken = lines.filter((line) => reader.line(line)).length
          const log = reader.build()
          expect(log.values.length).toBe(AXES * taken)
          expect(log.values.every(Number.isFinite)).toBe(true)
          expect(taken + log.problemCount).toBeLessThanOrEqual(lines.length)
        },
      ),
    )
  })
})
