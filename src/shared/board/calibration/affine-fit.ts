import { leastSquares } from '../math/least-squares'

export interface AffineFit {
  /** measured = matrix · truth + offset; rows by measured axis. */
  matrix: number[][]
  offset: number[]
  /** Sum of squared residuals of each measured axis. */
  residual: number[]
}

/**
 * Sensor model of a tumble: measured = S · true + b, by least squares over poses (as in AN-1057 and
 * AN4399 of two makers). Diagonal of S: gains; the rest: cross-axis sensitivity together with how
 * squarely the poses stood. Null when the poses do not determine it.
 * @param truth what each pose should read, m values; at least m + 1 poses that span
 * @param measured what it did read
 */
export function fitAffine(
  truth: readonly (readonly number[])[],
  measured: readonly (readonly number[])[],
): AffineFit | null {
  const rows = truth.map((pose) => [...pose, 1])
  const axes = measured[0]?.length ?? 0
  const fit: AffineFit = { matrix: [], offset: [], residual: [] }
  for (let axis = 0; axis < axes; axis++) {
    const values = measured.map((pose) => pose[axis]!)
    const coefficients = leastSquares(rows, values)
    if (coefficients === null) return null
    fit.offset.push(coefficients.at(-1)!)
    fit.matrix.push(coefficients.slice(0, -1))
    fit.residual.push(
      rows.reduce((sum, row, i) => {
        const predicted = row.reduce((total, x, j) => total + x * coefficients[j]!, 0)
        return sum + (values[i]! - predicted) ** 2
      }, 0),
    )
  }
  return fit
}
