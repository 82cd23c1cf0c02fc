import { mean } from '../../statistics/summary'
import { logistic } from '../separation'

/** Slopes of the logistic curve that are tried; the least loss counts. */
const SLOPES = Array.from({ length: 25 }, (_, i) => 2 ** (i / 2 - 4))

/** Distances of examples to gestures, row-major; smaller is nearer. */
export interface DistanceTable {
  classes: readonly number[]
  classCount: number
  values: Float64Array
}

/**
 * How badly a table tells each example's own gesture from the nearest other: logarithmic loss of the
 * best logistic curve over the difference of the two, as `separationLosses` has it for logarithms.
 */
export function marginLoss({ classes, classCount, values }: DistanceTable): number {
  const leads = classes.map((own, i) => {
    let other = Number.POSITIVE_INFINITY
    for (let g = 0; g < classCount; g++) {
      if (g !== own) other = Math.min(other, values[i * classCount + g]!)
    }
    return values[i * classCount + own]! - other
  })
  return Math.min(...SLOPES.map((slope) => mean(leads.map((lead) => logistic(slope * lead)))))
}

/** Share of examples whose own gesture is nearest. */
export function shareNearest({ classes, classCount, values }: DistanceTable): number {
  const hits = classes.filter((own, i) => {
    const row = values.subarray(i * classCount, (i + 1) * classCount)
    return row.indexOf(Math.min(...row)) === own
  })
  return hits.length / classes.length
}
