import type { Example } from '../examples'

/** More groups cost time and change little. */
const MOST_GROUPS = 5

/**
 * Rows that are left out together, in at most five groups: whole testers; where there is one tester,
 * takes, of each class in turn, so that no group holds a class alone.
 */
export function groupsOf(examples: readonly Example[]): number[][] {
  const testers = [...new Set(examples.map((example) => example.tester))].sort()
  const turns = new Map<number, number>()
  const groups: number[][] = []
  for (const [row, { gesture, tester }] of examples.entries()) {
    const turn = testers.length > 1 ? testers.indexOf(tester) : (turns.get(gesture) ?? 0)
    turns.set(gesture, turn + 1)
    const group = turn % MOST_GROUPS
    groups[group] ??= []
    groups[group].push(row)
  }
  return groups
}

/** The other rows. */
export function without(group: readonly number[], count: number): number[] {
  const out = new Set(group)
  return Array.from({ length: count }, (_, row) => row).filter((row) => !out.has(row))
}
