import { describe, expect, it } from 'vitest'
import { createRandom } from '../../../src/shared/statistics/random'
import type { Example } from '../../../src/shared/training/examples'
import {
  isClearlyLower,
  separationLoss,
  separationLosses,
} from '../../../src/shared/training/separation'
import { chooseTemplates } from '../../../src/shared/training/template-choice'
import { chooseTemplatesPlainly } from './plain-template-choice'

/** Examples at places on a line; distance is how far apart they lie. */
function onLine(places: [gesture: number, tester: string, at: number][]) {
  const examples = places.map(
    ([gesture, tester], i): Example => ({ id: `e${i}`, gesture, tester, query: new Int8Array(0) }),
  )
  const table = Float64Array.from(
    places.flatMap(([, , a]) => places.map(([, , b]) => Math.abs(a - b))),
  )
  return { examples, table }
}

const twoGestures = onLine([
  [0, 'A', 0],
  [0, 'B', 100],
  [0, 'C', 210],
  [1, 'A', 1000],
  [1, 'B', 1090],
  [1, 'C', 1200],
])

describe('templates', () => {
  it('are the medoid when one is allowed and there is nothing to be told from', () => {
    const { table, examples } = onLine([
      [0, 'A', 0],
      [0, 'B', 100],
      [0, 'C', 210],
    ])
    expect(chooseTemplates(table, examples, 1, { perGesture: 1, total: 9 })).toEqual([[1]])
  })

  it('stay within the limits for a gesture and for all', () => {
    const { table, examples } = twoGestures
    const limited = chooseTemplates(table, examples, 2, { perGesture: 3, total: 4 })
    expect(limited.flat().length).toBeLessThanOrEqual(4)
    const each = chooseTemplates(table, examples, 2, { perGesture: 2, total: 100 })
    for (const list of each) expect(list.length).toBeLessThanOrEqual(2)
  })

  it('are of the gesture they stand for, and none twice', () => {
    const { table, examples } = twoGestures
    const chosen = chooseTemplates(table, examples, 2, { perGesture: 3, total: 6 })
    expect(new Set(chosen.flat()).size).toBe(chosen.flat().length)
    for (const [gesture, list] of chosen.entries()) {
      for (const i of list) expect(examples[i]?.gesture).toBe(gesture)
    }
  })

  it('keep a manner that only one tester has, though it serves no other tester yet', () => {
    const { table, examples } = onLine([
      [0, 'A', 0],
      [0, 'A', 10],
      [0, 'B', 20],
      [0, 'B', 30],
      [0, 'left', 2000],
      [0, 'left', 2010],
      [1, 'A', 1000],
      [1, 'B', 1010],
      [1, 'left', 1020],
    ])
    const [first] = chooseTemplates(table, examples, 2, { perGesture: 3, total: 6 })
    expect(first?.some((i) => examples[i]?.tester === 'left')).toBe(true)
  })

  it('are none for a gesture without examples', () => {
    const { table, examples } = twoGestures
    expect(chooseTemplates(table, examples, 3, { perGesture: 2, total: 9 })[2]).toEqual([])
  })
})

describe('separation', () => {
  it('is near nought for gestures far apart and near a coin for gestures in one heap', () => {
    expect(separationLoss(twoGestures.table, twoGestures.examples)).toBeLessThan(0.01)
    const mixed = onLine(Array.from({ length: 40 }, (_, i) => [i % 2, `T${i % 4}`, (i * 37) % 101]))
    expect(separationLoss(mixed.table, mixed.examples)).toBeGreaterThan(0.4)
  })

  it('does not depend on the unit of distance', () => {
    const { table, examples } = twoGestures
    const scaled = table.map((distance) => 1000 * distance)
    expect(separationLoss(scaled, examples)).toBeCloseTo(separationLoss(table, examples), 2)
  })

  it('is clearly lower only when the gain is beyond its error', () => {
    const base = Float64Array.of(0.5, 0.6, 0.4, 0.5)
    expect(
      isClearlyLower(
        base.map((loss) => loss - 0.1),
        base,
        2,
      ),
    ).toBe(true)
    expect(isClearlyLower(Float64Array.of(0.2, 0.9, 0.1, 0.6), base, 2)).toBe(false)
    expect(isClearlyLower(base, base, 2)).toBe(false)
  })

  it('has no loss for an example that has nothing to be compared with', () => {
    const { table, examples } = onLine([
      [0, 'A', 0],
      [0, 'A', 1],
      [1, 'B', 5],
    ])
    expect([...separationLosses(table, examples)].every(Number.isNaN)).toBe(true)
  })
})

it('the short cuts of the choice change no answer, ties included', () => {
  for (let seed = 0; seed < 200; seed++) {
    const random = createRandom(seed)
    const gestures = 1 + random.integer(5)
    const testers = 1 + random.integer(5)
    // Coarse places make ties.
    const step = seed % 3 === 0 ? 120 : 1
    const { table, examples } = onLine(
      Array.from({ length: 3 + random.integer(40) }, () => {
        const gesture = random.integer(gestures)
        const at = Math.round((300 * gesture + 250 * random.normal()) / step) * step
        return [gesture, `T${random.integer(testers)}`, at]
      }),
    )
    const limits = { perGesture: 1 + random.integer(6), total: gestures + random.integer(20) }
    expect(chooseTemplates(table, examples, gestures, limits)).toEqual(
      chooseTemplatesPlainly(table, examples, gestures, limits),
    )
  }
})
