import type { Algebra } from '../../core/core'

/** What the core's module does much faster, with every sum in the same order. */
export const PLAIN_ALGEBRA: Algebra = {
  gram: gramOf,
  product: productOf,
  inverse: (matrix, n) => inverseFromCholesky(cholesky(matrix.slice(), n), n),
}

function productOf(a: Float64Array, rows: number, b: Float64Array, columns: number): Float64Array {
  const terms = a.length / rows
  const out = new Float64Array(rows * columns)
  for (let i = 0; i < rows; i++) {
    for (let k = 0; k < terms; k++) {
      const factor = a[i * terms + k]!
      for (let c = 0; c < columns; c++) out[i * columns + c]! += factor * b[k * columns + c]!
    }
  }
  return out
}

function gramOf(values: Float64Array, rows: number, start: number): Float64Array {
  const columns = values.length / rows
  const gram = new Float64Array(rows * rows)
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = start
      const [a, b] = [i * columns, j * columns]
      for (let c = 0; c < columns; c++) sum += values[a + c]! * values[b + c]!
      gram[i * rows + j] = sum
      gram[j * rows + i] = sum
    }
  }
  return gram
}

/**
 * Lower Cholesky factor of a symmetric positive definite n × n matrix, in place of its lower half
 * (Golub and Van Loan, Matrix Computations, algorithm 4.2.2, by rows).
 * @throws RangeError when the matrix is not positive definite.
 */
export function cholesky(a: Float64Array, n: number): Float64Array {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j]!
      for (let k = 0; k < j; k++) sum -= a[i * n + k]! * a[j * n + k]!
      if (i !== j) a[i * n + j] = sum / a[j * n + j]!
      else if (sum > 0) a[i * n + i] = Math.sqrt(sum)
      else throw new RangeError('the matrix is not positive definite')
    }
  }
  return a
}

/** Solves L Lᵀ x = b in place of b, for `columns` right-hand sides side by side. */
export function solveCholesky(
  factor: Float64Array,
  n: number,
  b: Float64Array,
  columns: number,
): Float64Array {
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) addRow(b, i, k, -factor[i * n + k]!, columns)
    scaleRow(b, i, 1 / factor[i * n + i]!, columns)
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) addRow(b, i, k, -factor[k * n + i]!, columns)
    scaleRow(b, i, 1 / factor[i * n + i]!, columns)
  }
  return b
}

/** Inverse of the matrix whose factor is given: G = L⁻ᵀ L⁻¹, n × n. */
export function inverseFromCholesky(factor: Float64Array, n: number): Float64Array {
  // Rows of L⁻¹; row i ends at column i.
  const lower = new Float64Array(n * n)
  for (let i = 0; i < n; i++) {
    lower[i * n + i] = 1
    for (let k = 0; k < i; k++) {
      const f = factor[i * n + k]!
      for (let j = 0; j <= k; j++) lower[i * n + j]! -= f * lower[k * n + j]!
    }
    const scale = 1 / factor[i * n + i]!
    for (let j = 0; j <= i; j++) lower[i * n + j]! *= scale
  }
  const inverse = new Float64Array(n * n)
  for (let k = 0; k < n; k++) {
    for (let i = 0; i <= k; i++) {
      const f = lower[k * n + i]!
      for (let j = 0; j <= i; j++) inverse[i * n + j]! += f * lower[k * n + j]!
    }
  }
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) inverse[j * n + i] = inverse[i * n + j]!
  return inverse
}

function addRow(b: Float64Array, to: number, from: number, factor: number, columns: number): void {
  for (let c = 0; c < columns; c++) b[to * columns + c]! += factor * b[from * columns + c]!
}

function scaleRow(b: Float64Array, row: number, factor: number, columns: number): void {
  for (let c = 0; c < columns; c++) b[row * columns + c]! *= factor
}
