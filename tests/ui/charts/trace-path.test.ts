import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { niceCeiling, rootHeight, rootShare, rootTicks, ticks } from '../../../src/ui/charts/scale'
import { tracePath } from '../../../src/ui/charts/trace-path'

const points = (path: string) =>
  path
    .split(/[ML]/)
    .filter((part) => part !== '')
    .map((part) => part.split(' ').map(Number) as [number, number])

describe('tracePath', () => {
  test('few samples are drawn one by one from edge to edge', () => {
    const path = tracePath(
      (i) => [3, 1, 2][i],
      { from: 0, to: 3 },
      100,
      (v) => v,
    )
    expect(points(path)).toEqual([
      [0, 3],
      [50, 1],
      [100, 2],
    ])
  })

  test('a single spike among 100 000 samples is still drawn at its height and place', () => {
    const path = tracePath(
      (i) => (i === 73_211 ? 900 : 0),
      { from: 0, to: 100_000 },
      300,
      (v) => v,
    )
    const spike = points(path).filter(([, y]) => y === 900)
    expect(spike).toHaveLength(1)
    expect(Math.abs(spike[0][0] - 0.73211 * 300)).toBeLessThan(1)
    expect(points(path).length).toBeLessThanOrEqual(600)
  })

  test('a span is drawn from its own samples only', () => {
    const path = tracePath(
      (i) => i,
      { from: 10, to: 12 },
      100,
      (v) => v,
    )
    expect(points(path)).toEqual([
      [0, 10],
      [100, 11],
    ])
  })

  test('nothing is drawn without width or with less than two samples', () => {
    expect(
      tracePath(
        () => 1,
        { from: 0, to: 1 },
        100,
        (v) => v,
      ),
    ).toBe('')
    expect(
      tracePath(
        () => 1,
        { from: 0, to: 9 },
        0,
        (v) => v,
      ),
    ).toBe('')
  })
})

describe('scales', () => {
  test('the nice ceiling is never below its value and at most 2.5 times above', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (value) => {
        const nice = niceCeiling(value)
        expect(nice).toBeGreaterThanOrEqual(value * (1 - 1e-9))
        expect(nice).toBeLessThanOrEqual(value * 2.5)
      }),
    )
  })

  test('ticks of a stretched axis rise from 0 to its top and never crowd', () => {
    for (const top of [0.5, 1, 25, 1000, 2500]) {
      const places = rootTicks(top, 3, 0.14).map((value) => rootShare(value, top, 3))
      expect(places.at(0)).toBe(0)
      expect(places.at(-1)).toBe(1)
      for (let i = 1; i < places.length; i++) {
        expect(places[i]! - places[i - 1]!).toBeGreaterThanOrEqual(0.14)
      }
      expect(places.length).toBeGreaterThan(3)
    }
  })

  test('ticks keep to a nice step within their ends', () => {
    expect(ticks(0, 3, 4)).toEqual([0, 1, 2, 3])
    expect(ticks(0.3, 1.9, 4)).toEqual([0.5, 1, 1.5])
    expect(ticks(2, 2, 4)).toEqual([])
  })

  test('a threshold at 4 % of the top stands at a fifth of the height', () => {
    expect(rootHeight(4, 100, 50)).toBeCloseTo(40)
    expect(rootHeight(200, 100, 50)).toBe(0)
    expect(rootHeight(0, 100, 50)).toBe(50)
  })
})
