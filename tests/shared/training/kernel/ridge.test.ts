import { describe, expect, it } from 'vitest'
import { createRandom } from '../../../../src/shared/statistics/random'
import type { Matrix } from '../../../../src/shared/training/kernel/design-matrix'
import {
  cholesky,
  inverseFromCholesky,
  solveCholesky,
} from '../../../../src/shared/training/kernel/linear-algebra'
import { fitRidge } from '../../../../src/shared/training/kernel/ridge'

function randomMatrix(rows: number, columns: number, seed: number): Matrix {
  const random = createRandom(seed)
  const values = Float64Array.from({ length: rows * columns }, () => random.integer(33))
  return { rows, columns, values }
}

function rowsOf({ columns, values }: Matrix, rows: readonly number[]): Matrix {
  const picked = rows.flatMap((r) => [...values.subarray(r * columns, (r + 1) * columns)])
  return { rows: rows.length, columns, values: Float64Array.from(picked) }
}

function predict(table: Matrix, fit: ReturnType<typeof fitRidge>, row: number): number[] {
  const classes = fit.intercepts.length
  return [...fit.intercepts].map((intercept, g) => {
    let sum = intercept
    for (let c = 0; c < table.columns; c++)
      sum += table.values[row * table.columns + c]! * fit.weights[c * classes + g]!
    return sum
  })
}

describe('Cholesky factorisation', () => {
  it('gives the factor of the textbook example (4 12 -16, 12 37 -43, -16 -43 98)', () => {
    // Wikipedia, "Cholesky decomposition": L = (2; 6 1; -8 5 3).
    const factor = cholesky(Float64Array.from([4, 12, -16, 12, 37, -43, -16, -43, 98]), 3)
    expect([0, 3, 4, 6, 7, 8].map((at) => factor[at])).toEqual([2, 6, 1, -8, 5, 3])
  })
  it('solves and inverts what it factorised', () => {
    const factor = cholesky(Float64Array.from([4, 12, -16, 12, 37, -43, -16, -43, 98]), 3)
    // 4 12 -16 times (1, 2, 3) and so on.
    const x = solveCholesky(factor, 3, Float64Array.from([-20, -43, 192]), 1)
    expect([...x].map((value) => Math.round(value * 1e9) / 1e9)).toEqual([1, 2, 3])
    const inverse = inverseFromCholesky(factor, 3)
    expect(inverse[0]! * 4 + inverse[1]! * 12 + inverse[2]! * -16).toBeCloseTo(1, 9)
    expect(inverse[3]! * 4 + inverse[4]! * 12 + inverse[5]! * -16).toBeCloseTo(0, 9)
  })
  it('refuses a matrix that is not positive definite', () => {
    expect(() => cholesky(Float64Array.from([1, 2, 2, 1]), 2)).toThrow(RangeError)
  })
})

describe('ridge regression', () => {
  const classes = Array.from({ length: 120 }, (_, i) => i % 3)
  const table = randomMatrix(120, 10, 70)
  for (const [i, own] of classes.entries()) table.values[i * 10 + own]! += 25

  it('predicts groups left out as fits without them do', () => {
    const groups = Array.from({ length: 20 }, (_, g) =>
      classes.map((_, i) => i).filter((i) => i % 20 === g),
    )
    const whole = fitRidge(table, classes, 3, groups, [0.5])
    for (const group of groups) {
      const rest = classes.map((_, i) => i).filter((i) => !group.includes(i))
      const part = fitRidge(
        rowsOf(table, rest),
        rest.map((i) => classes[i]!),
        3,
        rest.map((_, i) => [i]),
        [0.5],
      )
      for (const row of group) {
        // The columns are standardised again without the group, hence not to the last digit.
        for (const [g, value] of predict(table, part, row).entries())
          expect(Math.abs(value - whole.heldOut[row * 3 + g]!)).toBeLessThan(0.05)
      }
    }
  })

  it('finds the classes of rows it was fitted to, and of rows left out', () => {
    const fit = fitRidge(
      table,
      classes,
      3,
      classes.map((_, i) => [i]),
    )
    const fitted = classes.filter((own, row) => {
      const scores = predict(table, fit, row)
      return scores.indexOf(Math.max(...scores)) === own
    })
    expect(fitted.length).toBeGreaterThan(108)
    const right = classes.filter((own, row) => {
      const held = fit.heldOut.subarray(row * 3, row * 3 + 3)
      return held.indexOf(Math.max(...held)) === own
    })
    expect(right.length).toBeGreaterThan(108)
  })

  it('chooses more strength where columns say nothing', () => {
    const noise = randomMatrix(120, 10, 71)
    const each = classes.map((_, i) => [i])
    expect(fitRidge(noise, classes, 3, each).strength).toBeGreaterThan(
      fitRidge(table, classes, 3, each).strength,
    )
  })
})
