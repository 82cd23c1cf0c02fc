import { describe, expect, test } from 'vitest'
import type { Vector3 } from '../../../src/shared/attitude/vector'
import { drawnApart } from '../../../src/shared/ribbon/draw-apart'
import { leastDirection, viewPlane } from '../../../src/shared/ribbon/view-plane'

describe('plane of the picture', () => {
  test('the least direction of a matrix built from known eigenvectors is found', () => {
    // V diag(5, 2, 0.5) Vᵀ with the columns of the rotation 50° about 1 2 3 (SciPy).
    const v = [
      [0.66830278, -0.563171626, 0.486013491],
      [0.665232309, 0.744848293, -0.051642965],
      [-0.332922466, 0.357825014, 0.872424146],
    ]
    const values = [5, 2, 0.5]
    const matrix = v.map((row) =>
      v.map((other) => values.reduce((sum, value, k) => sum + row[k]! * value * other[k]!, 0)),
    )
    const found = leastDirection(matrix)
    const sign = Math.sign(found[2])
    for (let i = 0; i < 3; i++) expect(sign * found[i]!).toBeCloseTo(v[i]![2]!, 7)
  })

  test('a line, which has no second direction, is seen from behind with up at the top', () => {
    const line = Array.from({ length: 20 }, (_, i): Vector3 => [0, 0, 0.02 * i])
    const { right, top } = viewPlane(line)
    expect(right[0]).toBeCloseTo(1, 9)
    expect(top[2]).toBeCloseTo(1, 9)
  })

  test('a tilted loop is seen square on: the plane holds all its points', () => {
    const loop = Array.from({ length: 40 }, (_, i): Vector3 => {
      const a = (2 * Math.PI * i) / 40
      return [Math.cos(a), 0.5 * Math.sin(a), Math.sin(a)]
    })
    const { right, top } = viewPlane(loop)
    const normal = [
      right[1] * top[2] - right[2] * top[1],
      right[2] * top[0] - right[0] * top[2],
      right[0] * top[1] - right[1] * top[0],
    ]
    for (const p of loop) {
      expect(Math.abs(normal[0]! * p[0] + normal[1]! * p[1] + normal[2]! * p[2])).toBeLessThan(1e-3)
    }
  })
})

describe('drawing apart', () => {
  const line = (places: number[]) => places.map((y) => ({ x: 0, y }))
  const ramp = Array.from({ length: 21 }, (_, i) => i / 20)
  const thereAndBack = [...ramp, ...[...ramp].reverse()]

  test('a stroke in one direction stays as it is', () => {
    expect(drawnApart(line(ramp))).toEqual(line(ramp))
  })

  test('there and back becomes a hairpin 0.6 as broad as long', () => {
    const apart = drawnApart(line(thereAndBack))
    const xs = apart.map((p) => p.x)
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(0.6, 9)
    expect(xs[0]!).toBeLessThan(xs.at(-1)!)
    for (const [i, p] of apart.entries()) expect(p.y).toBeCloseTo(thereAndBack[i]!, 9)
  })

  test('a loop is broad enough and stays as it is', () => {
    const loop = Array.from({ length: 40 }, (_, i) => ({
      x: Math.cos((2 * Math.PI * i) / 39),
      y: 0.8 * Math.sin((2 * Math.PI * i) / 39),
    }))
    expect(drawnApart(loop)).toEqual(loop)
  })

  test('points that all lie on one spot stay there', () => {
    for (const p of drawnApart([
      { x: 1, y: 2 },
      { x: 1, y: 2 },
    ]))
      expect(p).toEqual({ x: 1, y: 2 })
  })
})
