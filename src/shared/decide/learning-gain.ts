import { tQuantile } from '../statistics/clustered'
import type { ExpectedGain } from './data-decision'

/** Takes wrong of one tester who was held out, at one count. */
export interface Trial {
  tester: string
  count: number
  wrong: number
  n: number
}

/**
 * What going on from the last count to `next` is expected to gain, if errors go on falling as a power
 * of the count, as learning curves mostly do (Cortes, Jackel, Solla, Vapnik, Denker: Learning curves,
 * NIPS 6, 1993). An estimate: the power is fitted to few points; its uncertainty is that between
 * held-out testers, each left out in turn: 95 % by Student's t with one degree of freedom less than
 * testers, as few of them tell their own spread badly (Tukey, Annals of Mathematical Statistics 29, 1958,
 * 614). Null with fewer than three counts or two testers.
 */
export function expectedGain(trials: readonly Trial[], next: number): ExpectedGain | null {
  const counts = new Set(trials.map(({ count }) => count))
  const testers = [...new Set(trials.map(({ tester }) => tester))]
  if (counts.size < 3 || testers.length < 2) return null
  const value = gainOf(trials, next)
  const left = testers.map((out) =>
    gainOf(
      trials.filter(({ tester }) => tester !== out),
      next,
    ),
  )
  const middle = left.reduce((sum, gain) => sum + gain, 0) / left.length
  const squares = left.reduce((sum, gain) => sum + (gain - middle) ** 2, 0)
  const error = Math.sqrt(((left.length - 1) / left.length) * squares)
  const half = tQuantile(testers.length - 1) * error
  return { value, low: value - half, high: value + half }
}

/** Least squares of ln(errors) over ln(count), weighed by the takes; drawn on from the fitted line. */
function gainOf(trials: readonly Trial[], next: number): number {
  const points = byCount(trials)
  const last = points[points.length - 1]
  if (last === undefined) return 0
  let [weight, sumX, sumY, sumXx, sumXy] = [0, 0, 0, 0, 0]
  for (const { count, wrong, n } of points) {
    const [x, y] = [Math.log(count), Math.log((wrong + 0.5) / (n + 1))]
    // The variance of ln(errors) is about one over the number of errors.
    const own = wrong + 0.5
    weight += own
    sumX += own * x
    sumY += own * y
    sumXx += own * x * x
    sumXy += own * x * y
  }
  const spread = weight * sumXx - sumX * sumX
  const slope = spread === 0 ? 0 : (weight * sumXy - sumX * sumY) / spread
  const level = (sumY - slope * sumX) / weight
  const at = (count: number) => Math.exp(level + slope * Math.log(count))
  return at(last.count) - at(next)
}

function byCount(trials: readonly Trial[]): { count: number; wrong: number; n: number }[] {
  const counts = [...new Set(trials.map(({ count }) => count))].sort((a, b) => a - b)
  return counts.map((count) => {
    const own = trials.filter((trial) => trial.count === count)
    return {
      count,
      wrong: own.reduce((sum, trial) => sum + trial.wrong, 0),
      n: own.reduce((sum, trial) => sum + trial.n, 0),
    }
  })
}
