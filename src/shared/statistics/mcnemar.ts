import { logGamma } from './gamma'

/**
 * Exact two-sided McNemar test for two recognisers that answered the same takes: p-value of
 * `onlyFirst` takes that only the first had right and `onlySecond` that only the second had right,
 * from the binomial distribution with one half (McNemar, Psychometrika 12, 1947). Six takes against
 * none are the fewest that reach p < 0.05.
 */
export function mcnemarExact(onlyFirst: number, onlySecond: number): number {
  const n = onlyFirst + onlySecond
  if (n === 0) return 1
  const fewer = Math.min(onlyFirst, onlySecond)
  let tail = 0
  for (let i = 0; i <= fewer; i++) {
    tail += Math.exp(logGamma(n + 1) - logGamma(i + 1) - logGamma(n - i + 1) - n * Math.LN2)
  }
  return Math.min(1, 2 * tail)
}
