import fc from 'fast-check'
import { expect, it } from 'vitest'
import { thinned } from '../../../src/shared/training/thin-takes'

/** `count` takes that go round `gestures` gestures. */
const round = (count: number, gestures: number) =>
  Array.from({ length: count }, (_, index) => ({ index, gesture: index % gestures }))
const gestureOf = ({ gesture }: { gesture: number }) => gesture

it('takes every k-th where that meets all gestures', () => {
  const some = thinned(round(30, 3), 8, gestureOf)
  expect(some.map(({ index }) => index)).toEqual([0, 4, 8, 12, 16, 20, 24, 28])
})

it('meets each of eight gestures that come in turn, where every twelfth would be two of them', () => {
  const takes = round(1800, 8)
  const plain = new Set(takes.filter(({ index }) => index % 12 === 0).map(gestureOf))
  expect(plain.size).toBe(2)
  const some = thinned(takes, 150, gestureOf)
  expect(new Set(some.map(gestureOf)).size).toBe(8)
  expect(some.length).toBeLessThanOrEqual(150)
  // Spread over the whole row, not its beginning.
  expect(Math.max(...some.map(({ index }) => index))).toBeGreaterThan(1750)
})

it('keeps all when they are few, the order always, and every gesture its share', () => {
  fc.assert(
    fc.property(
      fc.array(fc.nat(5), { minLength: 1, maxLength: 400 }),
      fc.integer({ min: 10, max: 60 }),
      (gestures, most) => {
        const takes = gestures.map((gesture, index) => ({ index, gesture }))
        const some = thinned(takes, most, gestureOf)
        if (takes.length <= most) expect(some).toEqual(takes)
        expect(some.length).toBeLessThanOrEqual(most + 6)
        const indices = some.map(({ index }) => index)
        expect(indices).toEqual([...new Set(indices)].sort((a, b) => a - b))
        for (const gesture of new Set(gestures)) {
          const all = gestures.filter((one) => one === gesture).length
          const share = some.length / takes.length
          expect(some.filter((one) => one.gesture === gesture).length).toBeGreaterThanOrEqual(
            Math.floor(0.4 * share * all),
          )
        }
      },
    ),
  )
})
