/**
 * Coefficients c that make Σ (rows · c - values)² smallest, by the normal equations with pivoting. For a
 * handful of unknowns of like size, such as poses in g. Null when the rows do not determine them.
 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  values: readonly number[],
): number[] | null {
  const n = rows[0]?.length ?? 0
  const table = Array.from({ length: n }, (_, i) => [
    ...Array.from({ length: n }, (_, j) => sum(rows, (row) => row[i]! * row[j]!)),
    rows.reduce((total, row, k) => total + row[i]! * values[k]!, 0),
  ])
  const scale = Math.max(...table.map((row, i) => Math.abs(row[i]!)))
  for (let column = 0; column < n; column++) {
    let pivot = column
    for (let i = column + 1; i < n; i++) {
      if (Math.abs(table[i]![column]!) > Math.abs(table[pivot]![column]!)) pivot = i
    }
    if (!(Math.abs(table[pivot]![column]!) > 1e-9 * scale)) return null
    ;[table[column], table[pivot]] = [table[pivot]!, table[column]!]
    for (let i = 0; i < n; i++) {
      if (i === column) continue
      const factor = table[i]![column]! / table[column]![column]!
      for (let j = column; j <= n; j++) table[i]![j]! -= factor * table[column]![j]!
    }
  }
  return table.map((row, i) => row[n]! / row[i]!)
}

function sum<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((total, item) => total + of(item), 0)
}
