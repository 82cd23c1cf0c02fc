import type { Random } from './random'

/** A shuffled copy (Fisher and Yates). */
export function shuffled<T>(items: readonly T[], random: Random): T[] {
  const result = [...items]
  for (let i = result.length - 1; i > 0; i--) {
    const j = random.integer(i + 1)
    const item = result[i]!
    result[i] = result[j]!
    result[j] = item
  }
  return result
}
