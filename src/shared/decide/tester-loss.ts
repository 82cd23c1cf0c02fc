import { tQuantile } from '../statistics/clustered'
import type { PairedLoss } from '../statistics/paired'

/** Takes of one tester, and how many of them a setting has wrong that the other has right. */
export interface TesterFlips {
  lost: number
  won: number
  n: number
}

/** Testers from which on what they disagree on can be known. */
export const FEWEST_TESTERS = 3

/**
 * Standard error of the share of takes lost, over testers: a ratio of sums over clusters, linearised as
 * in `clusteredRate` (Cochran, Sampling Techniques, 3rd ed. 1977, chapter 6). Null with fewer than three.
 */
export function errorOverTesters(testers: readonly TesterFlips[]): number | null {
  const used = testers.filter(({ n }) => n > 0)
  if (used.length < FEWEST_TESTERS) return null
  const n = used.reduce((sum, each) => sum + each.n, 0)
  const loss = used.reduce((sum, { lost, won }) => sum + lost - won, 0) / n
  const squares = used.reduce((sum, each) => sum + (each.lost - each.won - each.n * loss) ** 2, 0)
  return Math.sqrt((used.length / (used.length - 1)) * (squares / n ** 2))
}

/**
 * The loss with an interval that holds over testers too: takes of one tester resemble each other, so
 * each end is the outer one of Tango's, which counts takes, and of Student's t over testers. With fewer
 * than three testers it stays Tango's.
 */
export function lossOverTesters(loss: PairedLoss, testers: readonly TesterFlips[]): PairedLoss {
  const error = errorOverTesters(testers)
  if (error === null) return loss
  const half = tQuantile(testers.filter(({ n }) => n > 0).length - 1) * error
  return {
    ...loss,
    low: Math.max(-1, Math.min(loss.low, loss.value - half)),
    high: Math.min(1, Math.max(loss.high, loss.value + half)),
  }
}
