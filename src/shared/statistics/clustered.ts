import type { Rate } from '../model/evaluation'
import { wilsonOfShare } from './wilson'

/** Takes of one tester; hits may be a mean over repetitions. */
export interface Cluster {
  hits: number
  n: number
}

/**
 * Quantile 0.975 of Student's t with 1 to 30 degrees of freedom, and the normal one beyond
 * (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2).
 */
const T_975 = [
  12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.16, 2.145,
  2.131, 2.12, 2.11, 2.101, 2.093, 2.086, 2.08, 2.074, 2.069, 2.064, 2.06, 2.056, 2.052, 2.048,
  2.045, 2.042,
] as const
const NORMAL_975 = 1.96

/**
 * Share over takes that come in clusters, one a tester: takes of one tester resemble each other, so
 * they say less on the next tester than as many takes of others would. The Wilson interval is that of
 * the effective number of takes, p (1 - p) over the variance between clusters, shrunk for the few
 * clusters that variance is known from; never of more takes than there are (Korn and Graubard,
 * Survey Methodology 24, 1998, 193-201). `n` stays the number of takes.
 */
export function clusteredRate(clusters: readonly Cluster[]): Rate {
  const used = clusters.filter(({ n }) => n > 0)
  const hits = used.reduce((sum, cluster) => sum + cluster.hits, 0)
  const n = used.reduce((sum, cluster) => sum + cluster.n, 0)
  if (n === 0) return { hits, n, value: Number.NaN, low: 0, high: 1 }
  const p = hits / n
  const plain = { hits, n, ...wilsonOfShare(p, n) }
  if (used.length < 2 || hits === 0 || hits === n) return plain
  const count = used.length
  const squares = used.reduce((sum, each) => sum + (each.hits - each.n * p) ** 2, 0)
  const variance = (count / (count - 1)) * (squares / n ** 2)
  if (variance === 0) return plain
  const freedom = (tQuantile(n - 1) / tQuantile(count - 1)) ** 2
  const effective = Math.min(n, ((p * (1 - p)) / variance) * freedom)
  return { hits, n, ...wilsonOfShare(p, effective) }
}

/** The same from single takes. */
export function rateByTester(trials: readonly { tester: string; hit: boolean }[]): Rate {
  const clusters = new Map<string, Cluster>()
  for (const { tester, hit } of trials) {
    const { hits, n } = clusters.get(tester) ?? { hits: 0, n: 0 }
    clusters.set(tester, { hits: hits + (hit ? 1 : 0), n: n + 1 })
  }
  return clusteredRate([...clusters.values()])
}

/** Quantile 0.975 of Student's t, for two-sided intervals of 95 %. */
export function tQuantile(freedom: number): number {
  return T_975[freedom - 1] ?? NORMAL_975
}
