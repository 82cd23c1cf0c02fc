import type { Example } from '../training/examples'
import { nearestIn } from './seen-takes'
import { bestSubsets, type Contest, type SubsetChoice } from './subset'

/** With more gestures the choice without a tester is greedy: it is made once a tester. */
const THOROUGH = 12

/** The best set of one size, and how it does for testers who had no say in it. */
export interface KeptChoice {
  choice: SubsetChoice
  /** By tester: takes of the gestures that the others' takes chose, and how many of them win. */
  unseen: { hits: number; n: number }[]
}

/**
 * Best sets of every size. A set that is chosen for its figure looks better than it is, so it is also
 * chosen again without each tester in turn, and tried on that tester's takes.
 * @param table distances between the examples
 * @param nearest as `nearestIn` gives it for all of them
 */
export function keptSets(
  table: Float64Array,
  examples: readonly Example[],
  nearest: readonly Float64Array[],
  gestureCount: number,
): KeptChoice[] {
  const contests = examples.map(({ gesture }, i) => contestOf(gesture, nearest[i]!))
  const kept = bestSubsets(contests, gestureCount).map(
    (choice): KeptChoice => ({ choice, unseen: [] }),
  )
  const testers = [...new Set(examples.map(({ tester }) => tester))].sort()
  if (testers.length < 2) return kept
  for (const tester of testers) {
    const without = nearestIn(table, examples, gestureCount, tester)
    const others = contestsOf(examples, without, (own) => own !== tester)
    for (const choice of bestSubsets(others, gestureCount, gestureCount <= THOROUGH)) {
      const members = new Set(choice.members)
      const own = examples.flatMap((example, i) =>
        example.tester === tester && members.has(example.gesture) ? [contests[i]!] : [],
      )
      const hits = own.filter(({ beatenBy }) => !beatenBy.some((g) => members.has(g))).length
      kept
        .find((one) => one.choice.members.length === choice.members.length)
        ?.unseen.push({ hits, n: own.length })
    }
  }
  return kept
}

function contestsOf(
  examples: readonly Example[],
  nearest: readonly Float64Array[],
  isUsed: (tester: string) => boolean,
): Contest[] {
  return examples.flatMap(({ gesture, tester }, i) =>
    isUsed(tester) ? [contestOf(gesture, nearest[i]!)] : [],
  )
}

/** A take wins over a gesture only if its own is strictly nearer. */
export function contestOf(gesture: number, nearest: Float64Array): Contest {
  const own = nearest[gesture]!
  const beatenBy: number[] = []
  for (const [other, distance] of nearest.entries())
    if (other !== gesture && Number.isFinite(distance) && distance <= own) beatenBy.push(other)
  return { gesture, beatenBy }
}
