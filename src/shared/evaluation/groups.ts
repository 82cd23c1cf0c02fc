import { createRandom } from '../statistics/random'
import { shuffled } from '../statistics/shuffled'
import type { Prepared, PreparedTake } from '../training/prepare'
import { MEASURE_TROUBLE } from '../words/en/measure-trouble'

/** Takes that are held out together. */
export interface Group {
  label: string
  takes: PreparedTake[]
}

const TAKE_GROUPS = 5

/** One group a tester, in the order of their codes. */
export function groupByTester({ takes }: Prepared): Group[] {
  const codes = [...new Set(takes.map(({ take }) => take.testerCode))].sort()
  return codes.map((code) => ({
    label: code,
    takes: takes.filter(({ take }) => take.testerCode === code),
  }))
}

/**
 * At most five groups, each with its share of every gesture and, as far as it goes, of every tester:
 * takes are shuffled within gesture and tester and then dealt out one by one.
 */
export function groupByTake({ takes, gestures }: Prepared, seed: number): Group[] {
  const counts = gestures.map((_, gesture) => takes.filter((t) => t.gesture === gesture).length)
  const count = Math.min(TAKE_GROUPS, Math.max(...counts))
  const random = createRandom(seed)
  const groups = Array.from({ length: count }, (_, index): Group => {
    return { label: MEASURE_TROUBLE.part(index + 1, count), takes: [] }
  })
  let dealt = 0
  for (const gesture of gestures.keys()) {
    const own = takes.filter((take) => take.gesture === gesture)
    for (const tester of groupByTester({ takes: own } as Prepared)) {
      for (const take of shuffled(tester.takes, random)) groups[dealt++ % count]!.takes.push(take)
    }
  }
  return groups.filter((group) => group.takes.length > 0)
}
