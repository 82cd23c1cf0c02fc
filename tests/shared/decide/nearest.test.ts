import { beforeAll, expect, test } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import type { Core } from '../../../src/shared/core/core'
import { contestOf, keptSets } from '../../../src/shared/decide/kept-sets'
import { nearestIn, nearestOf, seeTakes } from '../../../src/shared/decide/seen-takes'
import { warpOf } from '../../../src/shared/training/matcher-search'
import { prepareLibrary } from '../../../src/shared/training/prepare'
import { tinyLibrary } from '../training/tiny-library'

let core: Core

beforeAll(async () => {
  core = await loadCoreForNode()
})

test('the nearest held-out example of each gesture is that of comparing every two takes', () => {
  const prepared = prepareLibrary(tinyLibrary({ testers: 3, takesEach: 2 }))
  const seen = seeTakes(core, prepared)
  const { examples, nearest } = nearestOf(core, prepared, seen, seen.matcher)
  expect(examples).toHaveLength(18)
  const warp = warpOf(seen.matcher)
  for (const [i, one] of examples.entries()) {
    for (const gesture of [0, 1, 2]) {
      const held = examples.filter((e) => e.gesture === gesture && e.tester !== one.tester)
      const plain = Math.min(...held.map(({ query }) => core.dtw(one.query, query, warp)))
      expect(nearest[i]![gesture]).toBe(plain)
    }
  }
})

/** Two testers, two takes of each of three gestures; distances by hand. */
const EXAMPLES = ['A', 'B'].flatMap((tester) =>
  [0, 0, 1, 1, 2, 2].map((gesture, i) => ({
    id: `${tester}${i}`,
    gesture,
    tester,
    query: new Int8Array(),
  })),
)

function tableOf(distance: (i: number, j: number) => number): Float64Array {
  const n = EXAMPLES.length
  return Float64Array.from({ length: n * n }, (_, at) => distance(Math.floor(at / n), at % n))
}

test('a set is judged by takes of testers who had no say in choosing it', () => {
  const same = (i: number, j: number) => EXAMPLES[i]!.gesture === EXAMPLES[j]!.gesture
  // Gestures 0 and 1 are as one, except that the takes of each are nearer to their own by a little.
  const close = (i: number, j: number) => EXAMPLES[i]!.gesture < 2 && EXAMPLES[j]!.gesture < 2
  const table = tableOf((i, j) => (same(i, j) ? 10 : close(i, j) ? 11 : 100))
  const nearest = nearestIn(table, EXAMPLES, 3)
  expect([...nearest[0]!]).toEqual([10, 11, 100])
  const [two] = keptSets(table, EXAMPLES, nearest, 3)
  expect(two?.choice.score).toBe(1)
  expect(two?.unseen).toHaveLength(2)
  expect(two?.unseen.every(({ hits, n }) => hits === n && n === 4)).toBe(true)
})

test('a tie is not won, and a gesture without examples beats nobody', () => {
  expect(contestOf(0, Float64Array.of(10, 10, 12)).beatenBy).toEqual([1])
  expect(contestOf(0, Float64Array.of(10, Number.POSITIVE_INFINITY, 9)).beatenBy).toEqual([2])
})
