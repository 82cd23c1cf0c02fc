import { mean, standardDeviation } from '../statistics/summary'
import { apartness, type Example } from './examples'

/**
 * How badly distances tell each example's gesture from the others: logarithmic loss of the best
 * logistic curve over ln(distance to own gesture / distance to the nearest other), each example left
 * out with all of its tester. Its mean is 0 when perfect and ln 2 = 0.69 for a coin. The curve's slope
 * is fitted, so settings whose distances have different scales or powers can be compared.
 * @returns one loss an example, NaN where there is nothing to compare it with
 */
export function separationLosses(table: Float64Array, examples: readonly Example[]): Float64Array {
  const ratios = ownToOther(table, examples)
  let best = new Float64Array(examples.length).fill(Number.NaN)
  let least = Number.POSITIVE_INFINITY
  for (const slope of SLOPES) {
    const losses = ratios.map((ratio) => logistic(slope * ratio))
    const mean = meanLoss(losses)
    if (mean < least) [least, best] = [mean, losses]
  }
  return best
}

/** Mean of separationLosses over the examples that have one; 0 when none has. */
export function separationLoss(table: Float64Array, examples: readonly Example[]): number {
  return meanLoss(separationLosses(table, examples))
}

function meanLoss(losses: Float64Array): number {
  const known = losses.filter((loss) => !Number.isNaN(loss))
  return known.length === 0 ? 0 : mean(known)
}

/**
 * Whether losses are lower than those of another setting beyond doubt: the mean of the differences,
 * example by example, lies more than `errors` standard errors below nought. Choosing the least of
 * many losses would choose luck; what is tried must earn the place of what is known.
 */
export function isClearlyLower(losses: Float64Array, than: Float64Array, errors: number): boolean {
  const differences = losses
    .map((loss, i) => loss - than[i]!)
    .filter((difference) => !Number.isNaN(difference))
  if (differences.length < 2) return false
  const error = standardDeviation(differences) / Math.sqrt(differences.length)
  return mean(differences) < -errors * error
}

function ownToOther(table: Float64Array, examples: readonly Example[]): Float64Array {
  const n = examples.length
  const apart = apartness(examples)
  return Float64Array.from(examples, (example, i) => {
    let own = Number.POSITIVE_INFINITY
    let other = Number.POSITIVE_INFINITY
    for (let j = 0; j < n; j++) {
      if (!apart(i, j)) continue
      const distance = table[i * n + j]!
      if (examples[j]!.gesture === example.gesture) own = Math.min(own, distance)
      else other = Math.min(other, distance)
    }
    return Number.isFinite(own) && Number.isFinite(other) ? logRatio(own, other) : Number.NaN
  })
}

/** ln(own / other), with distances of nought counted as one. */
export function logRatio(own: number, other: number): number {
  return Math.log(Math.max(1, own)) - Math.log(Math.max(1, other))
}

const SLOPES = [2, 3, 4, 6, 8, 12, 16, 24, 32]

/** ln(1 + eˣ) without overflow. */
export function logistic(x: number): number {
  return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x))
}
