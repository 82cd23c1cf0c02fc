/** Σ x(i) y(i + lag) over the overlap. */
export function correlationAt(x: ArrayLike<number>, y: ArrayLike<number>, lag: number): number {
  const from = Math.max(0, -lag)
  const to = Math.min(x.length, y.length - lag)
  let sum = 0
  for (let i = from; i < to; i++) sum += x[i]! * y[i + lag]!
  return sum
}

export interface BestLag {
  /** Samples that y is later than x, refined between samples by a parabola through the peak. */
  lag: number
  /** Correlation coefficient of the overlap at the peak, -1 to 1. */
  coefficient: number
}

/**
 * Lag at which two series agree best, by the peak of their cross-correlation. Overlaps shorter than
 * `leastOverlap` are left out. Null when there is none.
 */
export function bestLag(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  mostLag: number,
  leastOverlap = 1,
): BestLag | null {
  let best = Number.NaN
  let peak = Number.NEGATIVE_INFINITY
  const low = Math.max(-mostLag, -(x.length - leastOverlap))
  const high = Math.min(mostLag, y.length - leastOverlap)
  for (let lag = low; lag <= high; lag++) {
    const value = correlationAt(x, y, lag)
    if (value > peak) {
      peak = value
      best = lag
    }
  }
  if (!Number.isFinite(peak)) return null
  const [before, after] = [correlationAt(x, y, best - 1), correlationAt(x, y, best + 1)]
  const bend = before - 2 * peak + after
  const shift = bend < 0 ? (0.5 * (before - after)) / bend : 0
  return { lag: best + shift, coefficient: peak / Math.sqrt(energy(x, y, best)) }
}

function energy(x: ArrayLike<number>, y: ArrayLike<number>, lag: number): number {
  const from = Math.max(0, -lag)
  const to = Math.min(x.length, y.length - lag)
  let [xx, yy] = [0, 0]
  for (let i = from; i < to; i++) {
    xx += x[i]! ** 2
    yy += y[i + lag]! ** 2
  }
  return xx * yy
}
