import { apartness, type Example } from './examples'

/**
 * How well distances tell gestures apart: mean logarithmic loss of the best logistic curve over
 * ln(distance to own gesture / distance to the nearest other), each example left out with all of its
 * tester. 0 is perfect, ln 2 = 0.69 is a coin. The curve's slope is fitted, so settings whose
 * distances have different scales or powers can be compared.
 */
export function separationLoss(table: Float64Array, examples: readonly Example[]): number {
  const n = examples.length
  const apart = apartness(examples)
  const ratios: number[] = []
  for (let i = 0; i < n; i++) {
    let own = Number.POSITIVE_INFINITY
    let other = Number.POSITIVE_INFINITY
    for (let j = 0; j < n; j++) {
      if (!apart(i, j)) continue
      const distance = table[i * n + j]!
      if (examples[j]!.gesture === examples[i]!.gesture) own = Math.min(own, distance)
      else other = Math.min(other, distance)
    }
    if (Number.isFinite(own) && Number.isFinite(other)) ratios.push(logRatio(own, other))
  }
  return ratios.length === 0 ? 0 : calibratedLoss(ratios)
}

/** ln(own / other), with distances of nought counted as one. */
export function logRatio(own: number, other: number): number {
  return Math.log(Math.max(1, own)) - Math.log(Math.max(1, other))
}

const SLOPES = [2, 3, 4, 6, 8, 12, 16, 24, 32]

function calibratedLoss(ratios: readonly number[]): number {
  const losses = SLOPES.map((slope) => {
    const sum = ratios.reduce((total, ratio) => total + logistic(slope * ratio), 0)
    return sum / ratios.length
  })
  return Math.min(...losses)
}

/** ln(1 + eˣ) without overflow. */
export function logistic(x: number): number {
  return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x))
}
