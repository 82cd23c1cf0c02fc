import { describe, expect, test } from 'vitest'
import { bestSubsets, type Contest, SubsetSearch } from '../../../src/shared/decide/subset'
import { createRandom } from '../../../src/shared/statistics/random'

/** Takes of gestures that are beaten by some others, some gestures more often than others. */
function drawn(seed: number, gestures: number, takes: number): Contest[] {
  const random = createRandom(seed)
  const weakness = Array.from({ length: gestures * gestures }, () => random.next() ** 3)
  return Array.from({ length: gestures * takes }, (_, i) => {
    const gesture = i % gestures
    const others = Array.from({ length: gestures }, (_, other) => other)
    return {
      gesture,
      beatenBy: others.filter(
        (other) => other !== gesture && random.next() < 0.4 * weakness[gesture * gestures + other]!,
      ),
    }
  })
}

/** Every set of a size, and how often its takes win, counted the plain way. */
function bruteForce(contests: readonly Contest[], gestures: number, size: number) {
  let best = { members: [] as number[], score: -1, worstPair: -1 }
  for (let bits = 0; bits < 1 << gestures; bits++) {
    const members = Array.from({ length: gestures }, (_, g) => g).filter((g) => (bits >> g) & 1)
    if (members.length !== size) continue
    const shareOf = (gesture: number, among: number[]) => {
      const own = contests.filter((one) => one.gesture === gesture)
      return own.filter((one) => !one.beatenBy.some((g) => among.includes(g))).length / own.length
    }
    const score = members.reduce((sum, g) => sum + shareOf(g, members), 0) / size
    let worstPair = 1
    for (const a of members)
      for (const b of members)
        if (a < b) worstPair = Math.min(worstPair, (shareOf(a, [b]) + shareOf(b, [a])) / 2)
    if (score > best.score + 1e-12) best = { members, score, worstPair }
    else if (score > best.score - 1e-12 && worstPair > best.worstPair + 1e-12)
      best = { members, score, worstPair }
  }
  return best
}

describe('the best set of gestures', () => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'is that of brute force over every size, drawn gestures %i',
    (seed) => {
      const gestures = 4 + (seed % 5)
      const contests = drawn(seed, gestures, 6 + seed)
      for (const choice of bestSubsets(contests, gestures)) {
        const plain = bruteForce(contests, gestures, choice.members.length)
        expect(choice.proven).toBe(true)
        expect(choice.score).toBeCloseTo(plain.score, 12)
        expect(choice.worstPair).toBeCloseTo(plain.worstPair, 12)
        expect(choice.bound).toBe(choice.score)
      }
    },
  )

  test('of forty gestures is found or its distance from the best is bounded', () => {
    const contests = drawn(9, 40, 5)
    const search = new SubsetSearch(contests, 40)
    for (const size of [3, 12, 39]) {
      const choice = search.best(size)
      expect(choice.members).toHaveLength(size)
      expect(choice.bound).toBeGreaterThanOrEqual(choice.score)
      expect(choice.proven).toBe(choice.bound === choice.score)
      const random = createRandom(size)
      for (let i = 0; i < 200; i++) {
        const all = Array.from({ length: 40 }, (_, g) => g).sort(() => random.next() - 0.5)
        expect(search.rate(all.slice(0, size)).score).toBeLessThanOrEqual(choice.bound + 1e-9)
      }
    }
  })

  test('never holds a gesture without takes, and names its worst pair', () => {
    const contests = [
      { gesture: 0, beatenBy: [1] },
      { gesture: 0, beatenBy: [] },
      { gesture: 1, beatenBy: [] },
      { gesture: 3, beatenBy: [] },
    ]
    const [two, three] = bestSubsets(contests, 4)
    expect(two?.members).toEqual([1, 3])
    expect(three?.members).toEqual([0, 1, 3])
    expect(three?.worst).toEqual([0, 1])
    expect(three?.worstPair).toBeCloseTo(2 / 3, 12)
  })
})
