import { expect, it } from 'vitest'
import { loadCoreForNode } from '../../../src/build/load-core'
import { createRandom } from '../../../src/shared/statistics/random'
import { shuffled } from '../../../src/shared/statistics/shuffled'
import { distancesBetween, type Example } from '../../../src/shared/training/examples'
import { KnownDistances } from '../../../src/shared/training/known-distances'

it('distances known from other rounds are those that are computed afresh', async () => {
  const core = await loadCoreForNode()
  const random = createRandom(1)
  const segment = (): Int8Array => Int8Array.from({ length: 60 }, () => random.integer(255) - 127)
  const takes = Array.from({ length: 40 }, (_, i) => ({
    id: `take ${i}`,
    // A take may be cut in several ways.
    queries: Array.from({ length: 1 + (i % 3) }, segment),
  }))
  // Two takes with the same bytes.
  takes[1]!.queries[0] = takes[0]!.queries[0]!.slice()
  const known = new KnownDistances()
  for (let round = 0; round < 30; round++) {
    const some = shuffled(takes, random).slice(0, random.integer(41))
    const examples = some.map(({ id, queries }): Example => {
      const query = queries[random.integer(queries.length)]!.slice()
      return { id, gesture: 0, tester: '', query }
    })
    // Other settings now and then; a narrow band and squared costs among them.
    const settings = {
      channels: round % 7 === 6 ? 3 : 6,
      band: round > 20 ? 1 : 4,
      cost: round > 25 ? (1 as const) : (0 as const),
    }
    expect(known.between(core, examples, settings)).toEqual(
      distancesBetween(core, examples, settings),
    )
  }
})
