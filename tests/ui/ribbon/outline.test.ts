import { describe, expect, test } from 'vitest'
import { spread } from '../../../src/shared/present/spread'
import { ribbonShape } from '../../../src/shared/ribbon/outline'

type Point = [number, number]

/** Corners of every polygon piece of a path of M, L and Z. */
function polygons(d: string): Point[][] {
  return d
    .split('Z')
    .filter((part) => part.includes('L'))
    .map((part) =>
      part
        .split(/[ML]/)
        .filter((corner) => corner !== '')
        .map((corner) => corner.split(' ').map(Number) as Point),
    )
}

function signedArea(corners: Point[]): number {
  return corners.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length]
    return sum + (x * nextY - nextX * y) / 2
  }, 0)
}

const point = (x: number, y: number, width = 1, halo = 0) => ({ x, y, width, halo })

describe('ribbonShape', () => {
  test('pieces of a path that turns back on itself all have the same sense', () => {
    const there = Array.from({ length: 9 }, (_, i) => point(i / 8, 0.5 + 0.1 * Math.sin(i)))
    const { body } = ribbonShape([...there, ...[...there].reverse()], 100)
    const areas = polygons(body).map(signedArea)
    expect(areas.length).toBeGreaterThan(10)
    expect(areas.every((area) => area < 0)).toBe(true)
  })

  test('discs turn as the pieces do: sweep flag 0 runs with a negative area on a screen', () => {
    const { body } = ribbonShape([point(0, 0)], 100)
    const flags = [...body.matchAll(/A\S+ \S+ 0 1 (\d)/g)].map((match) => match[1])
    expect(flags).toEqual(['0', '0'])
  })

  test('the whole stroke stays inside its square at every size', () => {
    for (const size of [24, 32, 104, 300]) {
      const corners = [point(0, 0), point(1, 0), point(1, 1), point(0, 1)]
      const found = polygons(ribbonShape(corners, size).body).flat(2)
      expect(Math.min(...found)).toBeGreaterThanOrEqual(0)
      expect(Math.max(...found)).toBeLessThanOrEqual(size)
    }
  })

  test('a fast stretch is drawn wider than a slow one', () => {
    const height = (width: number) => {
      const pieces = polygons(ribbonShape([point(0, 0.5, width), point(1, 0.5, width)], 100).body)
      const ys = pieces[0].map(([, y]) => y)
      return Math.max(...ys) - Math.min(...ys)
    }
    expect(height(1)).toBeGreaterThan(3 * height(0))
    expect(height(0)).toBeCloseTo(1)
  })
})

describe('spread', () => {
  test('picks evenly over the whole list, ends included', () => {
    expect(spread([0, 1, 2, 3, 4, 5, 6, 7, 8], 3)).toEqual([0, 4, 8])
    expect(spread([1, 2], 5)).toEqual([1, 2])
    expect(spread([1, 2, 3], 1)).toEqual([1])
  })
})
