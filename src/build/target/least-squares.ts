/**
 * Solves rows · x ≈ values so that the sum of squared relative errors is least, by the normal
 * equations and Gaussian elimination with pivots: a handful of unknowns, far from singular.
 * @returns x, none below nought: costs that come out negative are taken out and the rest fitted anew
 */
export function fitCosts(rows: readonly number[][], values: readonly number[]): number[] {
  const size = rows[0]?.length ?? 0
  const used = Array.from({ length: size }, (_, index) => index)
  for (;;) {
    const weighted = rows.map((row, i) =>
      used.map((column) => (row[column] ?? 0) / (values[i] ?? 1)),
    )
    const found = solveNormal(weighted)
    const negative = found.findIndex((value) => value < 0)
    if (negative < 0) {
      const all = new Array<number>(size).fill(0)
      used.forEach((column, index) => {
        all[column] = found[index] ?? 0
      })
      return all
    }
    used.splice(negative, 1)
  }
}

/** Least squares of rows · x = 1. */
function solveNormal(rows: readonly number[][]): number[] {
  const size = rows[0]?.length ?? 0
  const matrix = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size + 1 }, (_, j) =>
      rows.reduce((sum, row) => sum + (row[i] ?? 0) * (j < size ? (row[j] ?? 0) : 1), 0),
    ),
  )
  for (let column = 0; column < size; column++) {
    const below = matrix.slice(column)
    const pivot = below.reduce((best, row) =>
      Math.abs(row[column] ?? 0) > Math.abs(best[column] ?? 0) ? row : best,
    )
    matrix.splice(matrix.indexOf(pivot), 1)
    matrix.splice(column, 0, pivot)
    for (const row of matrix) {
      if (row === pivot) continue
      const factor = (row[column] ?? 0) / (pivot[column] ?? 1)
      for (let j = column; j <= size; j++) row[j] = (row[j] ?? 0) - factor * (pivot[j] ?? 0)
    }
  }
  return matrix.map((row, i) => (row[size] ?? 0) / (row[i] ?? 1))
}

/** Largest relative difference between rows · x and the values. */
export function largestError(
  rows: readonly number[][],
  values: readonly number[],
  x: readonly number[],
): number {
  const errors = rows.map((row, i) => {
    const estimate = row.reduce((sum, value, column) => sum + value * (x[column] ?? 0), 0)
    return Math.abs(estimate / (values[i] ?? 1) - 1)
  })
  return Math.max(...errors)
}
