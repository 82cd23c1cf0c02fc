import type { Matrix3 } from '../../model/target'
import { AXIS_ORDERS } from '../../target/mountings'
import { determinant } from '../../target/rotation'
import type { BenchLog } from './bench-log'
import type { StepId } from './steps'

const AXES = ['x', 'y', 'z'] as const

export interface FaceReadings {
  /** Change for 1 g along each pose axis: column = pose axis, row = sensor axis; g. */
  response: Matrix3
  /** Reading at no acceleration, g. */
  offset: [number, number, number]
}

/** Mean readings in the six poses; null unless all six are there. */
export function readFaces(bench: BenchLog): FaceReadings | null {
  const response: number[] = new Array(9).fill(0)
  const middle: number[] = new Array(9).fill(0)
  for (const [pose, axis] of AXES.entries()) {
    const up = bench.part(`face+${axis}` as StepId)
    const down = bench.part(`face-${axis}` as StepId)
    if (up === null || down === null) return null
    const [high, low] = [bench.means(up), bench.means(down)]
    for (let row = 0; row < 3; row++) {
      response[3 * row + pose] = (high[row]! - low[row]!) / 2
      middle[3 * row + pose] = (high[row]! + low[row]!) / 2
    }
  }
  // A pose a few degrees off moves its own axis by the cosine only, and the other two by the sine: the
  // middle is taken from the two faces that the sensor axis answers to most.
  const offset = [0, 1, 2].map((row) => {
    const size = (pose: number) => Math.abs(response[3 * row + pose]!)
    const own = [0, 1, 2].reduce((best, pose) => (size(pose) > size(best) ? pose : best), 0)
    return middle[3 * row + own]!
  })
  return { response: response as Matrix3, offset: offset as [number, number, number] }
}

export interface SignedAxes {
  /** Nearest way of exchanging and mirroring axes: signed permutation. */
  matrix: Matrix3
  /** Mean length of the response along it. */
  scale: number
  /** Share of the response that it explains, 0 to 1. */
  fit: number
  mirrored: boolean
  isIdentity: boolean
}

/**
 * The signed permutation nearest to a 3 × 3 response. All 48 are tried: the 24 with determinant -1
 * are mirrorings, which no way of mounting can make, so a sign is wrong.
 */
export function nearestSignedAxes(response: Matrix3): SignedAxes {
  let best = Number.NEGATIVE_INFINITY
  let order: readonly number[] = AXIS_ORDERS[0]
  for (const candidate of AXIS_ORDERS) {
    const score = candidate.reduce<number>(
      (sum, column, row) => sum + Math.abs(response[3 * row + column]!),
      0,
    )
    if (score > best) {
      best = score
      order = candidate
    }
  }
  const matrix: Matrix3 = [0, 0, 0, 0, 0, 0, 0, 0, 0]
  for (const [row, column] of order.entries()) {
    matrix[3 * row + column] = response[3 * row + column]! < 0 ? -1 : 1
  }
  const energy = response.reduce((sum, value) => sum + value * value, 0)
  const explained = order.reduce((sum, column, row) => sum + response[3 * row + column]! ** 2, 0)
  return {
    matrix,
    scale: best / 3,
    fit: energy === 0 ? 0 : explained / energy,
    mirrored: determinant(matrix) < 0,
    isIdentity: matrix[0] === 1 && matrix[4] === 1 && matrix[8] === 1,
  }
}

/** A sensor axis and what it reads, such as 'x' and '−y'. */
export interface MisreadAxis {
  axis: string
  reads: string
}

/** Only the axes that do not read themselves. */
export function misreadAxes({ matrix }: SignedAxes): MisreadAxis[] {
  return AXES.flatMap((axis, row) => {
    const column = [0, 1, 2].find((c) => matrix[3 * row + c] !== 0) ?? 0
    const negative = matrix[3 * row + column]! < 0
    if (column === row && !negative) return []
    return [{ axis, reads: `${negative ? '−' : ''}${AXES[column]}` }]
  })
}
