import { describe, expect, test } from 'vitest'
import { multiply } from '../../../src/shared/attitude/quaternion'
import { computeRibbon, type Ribbon, type RibbonPoint } from '../../../src/shared/ribbon/ribbon'
import { createRandom } from '../../../src/shared/statistics/random'
import { shuffled } from '../../../src/shared/statistics/shuffled'
import { eased, mirrored, RAD, recorded, turn } from './turning'

type Path = Extract<Ribbon, { kind: 'path' }>

function path(ribbon: Ribbon): Path {
  if (ribbon.kind !== 'path') throw new Error(`the ribbon is ${ribbon.kind}`)
  return ribbon
}

const distance = (a: RibbonPoint, b: RibbonPoint) => Math.hypot(a.x - b.x, a.y - b.y)

function extents(points: RibbonPoint[]) {
  const side = (pick: (p: RibbonPoint) => number) =>
    Math.max(...points.map(pick)) - Math.min(...points.map(pick))
  return { width: side((p) => p.x), height: side((p) => p.y) }
}

/** Largest offset between two pictures, in units of the square. */
function offset(a: Ribbon, b: Ribbon): number {
  const [pa, pb] = [path(a).points, path(b).points]
  return Math.max(...pa.map((p, i) => distance(p, pb[i]!)))
}

// The prop starts level, tip ahead (y), screen up.
const lift = (degrees: number, seconds = 1, seed?: number) =>
  recorded({
    attitude: (t) => turn(degrees * eased(t, seconds), 0, 0),
    seconds: seconds + 0.4,
    ...(seed === undefined ? {} : { seed }),
  })
const sweep = (degrees: number, seed?: number) =>
  recorded({
    attitude: (t) => turn(0, 0, -degrees * eased(t, 0.8)),
    seconds: 1.2,
    ...(seed === undefined ? {} : { seed }),
  })
/** To and fro `times` times about the axis across the prop. */
const shake = (degrees: number, times: number) =>
  recorded({
    attitude: (t) => turn(degrees * Math.sin(2 * Math.PI * times * eased(t, 1.2)), 0, 0),
    seconds: 1.6,
  })

describe('extent and shape', () => {
  test.each([30, 60, 90, 120])('lifting the tip by %i° draws an arc of that extent', (degrees) => {
    const ribbon = path(computeRibbon([lift(degrees)]))
    expect(ribbon.extentDeg).toBeCloseTo(degrees, 0)
    // The point sits 30 cm along and 20 cm below the axis: chord of a circle of 36 cm.
    const chordCm = 2 * Math.hypot(30, 20) * Math.sin((degrees * RAD) / 2)
    expect(ribbon.extentCm).toBeCloseTo(chordCm, -0.3)
    // Sagitta over chord of an arc: tan(angle / 4) / 2.
    const [first, middle, last] = [ribbon.points[0]!, ribbon.points[24]!, ribbon.points[47]!]
    const chord = distance(first, last)
    const height =
      Math.abs(
        (last.x - first.x) * (middle.y - first.y) - (last.y - first.y) * (middle.x - first.x),
      ) / chord
    expect(Math.abs(height / chord - Math.tan((degrees * RAD) / 4) / 2)).toBeLessThan(0.02)
  })

  test('a lift goes up in the picture, a lowering down, and time runs along the points', () => {
    const up = path(computeRibbon([lift(50)])).points
    expect(up[47]!.y).toBeLessThan(up[0]!.y - 0.5)
    const down = path(computeRibbon([lift(-50)])).points
    expect(down[47]!.y).toBeGreaterThan(down[0]!.y + 0.5)
  })

  test('a circle drawn with the tip closes, and is as round as 30 cm to the side and 36 cm up make it', () => {
    const around = (t: number) => 2 * Math.PI * eased(t, 1.5)
    const circle = recorded({
      attitude: (t) =>
        multiply(turn(0, 0, 20 * Math.sin(around(t))), turn(20 * Math.cos(around(t)), 0, 0)),
      seconds: 1.9,
    })
    const ribbon = path(computeRibbon([circle]))
    expect(ribbon.extentDeg).toBeCloseTo(40, 0)
    expect(distance(ribbon.points[0]!, ribbon.points[47]!)).toBeLessThan(0.05)
    const { width, height } = extents(ribbon.points)
    // Yaw moves the drawing point about the vertical at 30 cm, pitch about the level axis at √(30² + 20²).
    expect(Math.abs(width / height - 30 / Math.hypot(30, 20))).toBeLessThan(0.03)
  })

  test('speed is widest in the middle of a stroke and nothing at its ends', () => {
    const { points } = path(computeRibbon([lift(90)]))
    expect(points[24]!.width).toBeGreaterThan(0.95)
    expect(points[0]!.width).toBeLessThan(0.3)
    expect(points[47]!.width).toBeLessThan(0.3)
  })

  test('a movement that shifts the prop without turning it draws its course too', () => {
    const raise = recorded({
      attitude: () => turn(0, 0, 0),
      place: (t) => [0, 0, 0.4 * eased(t, 0.9)],
      seconds: 1.3,
    })
    const ribbon = path(computeRibbon([raise]))
    expect(ribbon.extentDeg).toBeLessThan(1)
    expect(ribbon.extentCm).toBeCloseTo(40, -0.5)
    const { width, height } = extents(ribbon.points)
    expect(height).toBeGreaterThan(0.9)
    expect(width).toBeLessThan(0.1)
  })

  test('a twist about the long axis draws an arc though the tip stays', () => {
    const twist = recorded({ attitude: (t) => turn(0, 90 * eased(t, 0.6), 0), seconds: 1 })
    const ribbon = path(computeRibbon([twist]))
    expect(ribbon.extentDeg).toBeLessThan(1)
    expect(ribbon.extentCm).toBeCloseTo(20 * Math.SQRT2, 0)
  })

  test('strokes that lie on each other are drawn apart so that they can be counted', () => {
    for (const times of [1, 3]) {
      const { points } = path(computeRibbon([shake(15, times)], { points: 96 }))
      const { width, height } = extents(points)
      expect(Math.min(width, height)).toBeGreaterThan(0.4)
      const turns = points.filter((p, i) => {
        const [before, after] = [points[i - 3], points[i + 3]]
        if (before === undefined || after === undefined) return false
        return (
          points.slice(i - 3, i + 4).every((q) => q.y >= p.y) ||
          points.slice(i - 3, i + 4).every((q) => q.y <= p.y)
        )
      })
      expect(turns).toHaveLength(2 * times)
    }
  })
})

describe('what must not matter', () => {
  const takes = [80, 90, 84, 97, 88].map((degrees, i) => sweep(degrees, i))

  test('the order of the takes', () => {
    const picture = computeRibbon(takes)
    for (let i = 0; i < 10; i++) {
      expect(computeRibbon(shuffled(takes, createRandom(i)))).toEqual(picture)
    }
  })

  test('the order of two takes, of which neither is the middle', () => {
    expect(computeRibbon([takes[0]!, takes[1]!])).toEqual(computeRibbon([takes[1]!, takes[0]!]))
  })

  test('rest before and after the movement', () => {
    const long = recorded({
      attitude: (t) => turn(0, 0, -80 * eased(t, 0.8, 1.5)),
      seconds: 4,
    })
    expect(offset(computeRibbon([long]), computeRibbon([sweep(80)]))).toBeLessThan(0.03)
  })

  test('the roll of the grip', () => {
    const rolled = (roll: number) =>
      recorded({
        attitude: (t) => multiply(turn(0, 0, -80 * eased(t, 0.8)), turn(0, roll, 0)),
        seconds: 1.2,
      })
    for (const roll of [40, -90, 180]) {
      expect(offset(computeRibbon([rolled(roll)]), computeRibbon([rolled(0)]))).toBeLessThan(0.02)
    }
  })

  test('the tempo: the same arc in half and in twice the time', () => {
    const picture = computeRibbon([lift(70)])
    expect(offset(computeRibbon([lift(70, 0.5)]), picture)).toBeLessThan(0.03)
    expect(offset(computeRibbon([lift(70, 2)]), picture)).toBeLessThan(0.03)
  })

  test('the sign of the accelerometer, when it is told', () => {
    const inverted = takes.map((take) => ({
      tMs: take.tMs,
      values: take.values.map((v, i) => (i % 6 < 3 ? -v : v)),
    }))
    expect(computeRibbon(inverted, { accelSigns: takes.map(() => -1 as const) })).toEqual(
      computeRibbon(takes),
    )
  })

  test('noise and rounding of a phone, by more than 0.06 of the picture', () => {
    const noisy = [1, 2, 3, 4, 5].map((seed) => lift(80, 1, seed))
    expect(offset(computeRibbon(noisy), computeRibbon([lift(80)]))).toBeLessThan(0.06)
  })
})

describe('what must show', () => {
  test('left and right: a mirrored movement gives the mirrored picture', () => {
    for (const block of [sweep(80), sweep(60, 4), shakeAcross()]) {
      const here = path(computeRibbon([block])).points
      const there = path(computeRibbon([mirrored(block)])).points
      for (const [i, p] of here.entries()) {
        expect(there[i]!.x).toBeCloseTo(1 - p.x, 6)
        expect(there[i]!.y).toBeCloseTo(p.y, 6)
        expect(there[i]!.width).toBeCloseTo(p.width, 6)
      }
    }
  })

  test('a sweep to the right goes right', () => {
    const { points } = path(computeRibbon([sweep(80)]))
    expect(points[47]!.x).toBeGreaterThan(points[0]!.x + 0.5)
  })

  test('different movements: any two of seven pictures are more than a sixth of the square apart', () => {
    const pictures = [
      lift(60),
      lift(-60),
      sweep(80),
      mirrored(sweep(80)),
      shake(20, 1),
      shake(20, 3),
      recorded({ attitude: (t) => turn(0, 90 * eased(t, 0.6), 0), seconds: 1 }),
    ].map((block) => path(computeRibbon([block])).points)
    for (const [i, a] of pictures.entries()) {
      for (const b of pictures.slice(i + 1)) {
        const apart = a.reduce((sum, p, k) => sum + distance(p, b[k]!), 0) / a.length
        expect(apart).toBeGreaterThan(1 / 6)
      }
    }
  })

  test('takes that differ more have a wider halo', () => {
    const halo = (blocks: ReturnType<typeof lift>[]) =>
      Math.max(...path(computeRibbon(blocks)).points.map((p) => p.halo))
    const alike = [80, 81, 82, 79, 80].map((degrees, i) => lift(degrees, 1, i))
    const unlike = [50, 70, 80, 95, 110].map((degrees, i) => lift(degrees, 1, i))
    expect(halo([lift(80)])).toBe(0)
    expect(halo(unlike)).toBeGreaterThan(3 * halo(alike))
  })

  test('everything lies inside the unit square, halo included', () => {
    for (const blocks of [[sweep(80)], [lift(50), lift(100)], [shake(20, 3)]]) {
      for (const p of path(computeRibbon(blocks)).points) {
        expect(Math.min(p.x - p.halo, p.y - p.halo)).toBeGreaterThanOrEqual(-1e-9)
        expect(Math.max(p.x + p.halo, p.y + p.halo)).toBeLessThanOrEqual(1 + 1e-9)
        expect(p.width >= 0 && p.width <= 1).toBe(true)
      }
    }
  })
})

function shakeAcross() {
  return recorded({
    attitude: (t) => turn(0, 0, 25 * Math.sin(4 * Math.PI * eased(t, 1.2))),
    seconds: 1.6,
  })
}

describe('nothing to draw', () => {
  test('a prop held still is static, with the elevation of its tip', () => {
    const held = [1, 2, 3].map((seed) =>
      recorded({
        attitude: (t) => turn(30 + 0.5 * Math.sin(50 * t), 0, 0),
        seconds: 1.5,
        seed,
      }),
    )
    const ribbon = computeRibbon(held)
    expect(ribbon).toMatchObject({ kind: 'static', takes: 3 })
    if (ribbon.kind === 'static') expect(Math.abs(ribbon.elevationDeg - 30)).toBeLessThan(2)
  })

  test('no takes, or takes without samples, give none', () => {
    expect(computeRibbon([])).toEqual({ kind: 'none' })
    const empty = { tMs: new Float64Array(), values: new Float32Array() }
    expect(computeRibbon([empty])).toEqual({ kind: 'none' })
    const still = recorded({ attitude: () => turn(0, 0, 0), seconds: 0.02 })
    expect(computeRibbon([still])).toEqual({ kind: 'none' })
  })

  test('a take with a value that is not a number is left out', () => {
    const damaged = lift(60)
    damaged.values[50] = Number.NaN
    expect(computeRibbon([damaged])).toEqual({ kind: 'none' })
    expect(computeRibbon([damaged, lift(60)])).toEqual(computeRibbon([lift(60)]))
  })

  test('readings of nothing but zeros, and a movement up to the last sample, stay finite', () => {
    const zeros = {
      tMs: Float64Array.from({ length: 60 }, (_, i) => 16 * i),
      values: new Float32Array(360),
    }
    const cut = recorded({ attitude: (t) => turn(300 * t, 0, 0), seconds: 0.5 })
    const sameTime = { tMs: new Float64Array(cut.tMs.length), values: cut.values }
    for (const block of [zeros, cut, sameTime]) {
      const text = JSON.stringify(computeRibbon([block]))
      expect(text).not.toContain('null')
    }
  })
})
