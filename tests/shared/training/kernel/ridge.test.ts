import { describe, expect, it } from 'vitest'
import { createRandom } from '../../../../src/shared/statistics/random'
import { Design } from '../../../../src/shared/training/kernel/design'
import type { CountTable } from '../../../../src/shared/training/kernel/design-matrix'
import {
  cholesky,
  invertFactor,
  PLAIN_ALGEBRA,
  solveCholesky,
} from '../../../../src/shared/training/kernel/linear-algebra'
import { fitRidge, weightsOf } from '../../../../src/shared/training/kernel/ridge'

const FEATURES = 4
const COLUMNS = 3 * FEATURES

function randomTable(rows: number, seed: number): CountTable {
  const random = createRandom(seed)
  const counts = Uint8Array.from({ length: rows * COLUMNS }, () => random.integer(33))
  return { rows, features: FEATURES, counts }
}

function rowsOf({ features, counts }: CountTable, rows: readonly number[]): CountTable {
  const picked = rows.flatMap((r) => [...counts.subarray(r * COLUMNS, (r + 1) * COLUMNS)])
  return { rows: rows.length, features, counts: Uint8Array.from(picked) }
}

/** A fit to all columns. */
function fitTable(
  table: CountTable,
  classes: readonly number[],
  groups: readonly number[][],
  strengths?: readonly number[],
) {
  const design = new Design(table, groups.flat(), [], PLAIN_ALGEBRA)
  const fit = fitRidge(design.gram(FEATURES, 3), classes, 3, groups, strengths)
  const counts = design.counts(FEATURES, 3)
  const weights = weightsOf(fit, design, counts, design.columnsOf(FEATURES, 3))
  const weighted = (row: ArrayLike<number>, g: number) =>
    Array.from(row).reduce((sum, count, c) => sum + count * weights[c * 3 + g]!, 0)
  const rowOf = (of: CountTable, row: number) =>
    of.counts.subarray(row * COLUMNS, (row + 1) * COLUMNS)
  // Every row says the same intercept.
  const intercepts = [0, 1, 2].map((g) => fit.fitted[g]! - weighted(rowOf(table, 0), g))
  const predict = (of: CountTable, row: number) =>
    intercepts.map((intercept, g) => intercept + weighted(rowOf(of, row), g))
  return { fit, predict }
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
    // L = (2; 6 1; -8 5 3), by rows.
    const lower = invertFactor(factor, 3)
    expect(lower[0]! * 2).toBeCloseTo(1, 9)
    expect(lower[6]! * 2 + lower[7]! * 6 + lower[8]! * -8).toBeCloseTo(0, 9)
    expect(lower[8]! * 3).toBeCloseTo(1, 9)
  })
  it('refuses a matrix that is not positive definite', () => {
    expect(() => cholesky(Float64Array.from([1, 2, 2, 1]), 2)).toThrow(RangeError)
  })
})

describe('ridge regression', () => {
  const classes = Array.from({ length: 120 }, (_, i) => i % 3)
  const table = randomTable(120, 70)
  for (const [i, own] of classes.entries()) table.counts[i * COLUMNS + own]! += 25
  const each = classes.map((_, i) => [i])

  it('predicts groups left out as fits without them do', () => {
    const groups = Array.from({ length: 20 }, (_, g) =>
      classes.map((_, i) => i).filter((i) => i % 20 === g),
    )
    const whole = fitTable(table, classes, groups, [0.5]).fit
    for (const group of groups) {
      const rest = classes.map((_, i) => i).filter((i) => !group.includes(i))
      const part = fitTable(
        rowsOf(table, rest),
        rest.map((i) => classes[i]!),
        rest.map((_, i) => [i]),
        [0.5],
      )
      for (const row of group) {
        // The columns are standardised again without the group, hence not to the last digit.
        for (const [g, value] of part.predict(table, row).entries())
          expect(Math.abs(value - whole.heldOut[row * 3 + g]!)).toBeLessThan(0.05)
      }
    }
  })

  it('finds the classes of rows it was fitted to, and of rows left out', () => {
    const { fit, predict } = fitTable(table, classes, each)
    const fitted = classes.filter((own, row) => {
      const scores = predict(table, row)
      for (const [g, score] of scores.entries())
        expect(score).toBeCloseTo(fit.fitted[row * 3 + g]!, 4)
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
    const noise = randomTable(120, 71)
    expect(fitTable(noise, classes, each).fit.strength).toBeGreaterThan(
      fitTable(table, classes, each).fit.strength,
    )
  })

  it('finds the strength with the least error as trying all of them does', () => {
    const strengths = [0.01, 0.03, 0.1, 0.3, 1, 3]
    const found = new Set<number>()
    for (let seed = 0; seed < 40; seed++) {
      const some = randomTable(40, seed)
      const own = classes.slice(0, 40)
      for (const [i, g] of own.entries()) some.counts[i * COLUMNS + g]! += 2 * (seed % 20)
      const groups = [0, 1, 2, 3, 4].map((part) => [...own.keys()].filter((i) => i % 5 === part))
      const one = fitTable(some, own, groups).fit
      const losses = strengths.map((strength) => fitTable(some, own, groups, [strength]).fit.loss)
      expect(one.loss).toBe(Math.min(...losses))
      found.add(one.strength)
    }
    expect(found.size).toBeGreaterThan(2)
  })
})

it('choices that share columns have the products of each alone', () => {
  const table = randomTable(30, 7)
  // Any order of the rows.
  const order = Array.from({ length: 30 }, (_, i) => (7 * i) % 30)
  const shared = new Design(table, order, [2, 3, 4], PLAIN_ALGEBRA)
  for (const [features, pools] of [
    [4, 2],
    [2, 3],
    [3, 2],
    [3, 3],
  ] as const) {
    const alone = new Design(table, order, [], PLAIN_ALGEBRA).gram(features, pools)
    const values = shared.gram(features, pools)
    const { counts } = table
    for (let i = 0; i < 30; i++) {
      for (let j = 0; j <= i; j++) {
        let sum = 0
        for (const c of shared.columnsOf(features, pools)) {
          const [a, b] = [counts[order[i]! * COLUMNS + c]!, counts[order[j]! * COLUMNS + c]!]
          sum += ((a - shared.means[c]!) * (b - shared.means[c]!)) / shared.scales[c]! ** 2
        }
        expect(values[i * 30 + j]).toBeCloseTo(sum / (features * pools), 5)
        expect(alone[i * 30 + j]).toBeCloseTo(values[i * 30 + j]!, 5)
      }
    }
  }
})
