import { describe, expect, test } from 'vitest'
import {
  bareFlashes,
  changes,
  generalFlashes,
  MOST_FLASHES,
  mostInASecond,
  redFlashes,
} from '../../../src/shared/light/flashes'
import { type LinearRgb, linearOf } from '../../../src/shared/light/luminance'

const STEP_MS = 5
const linear = (...rgb: number[]) => rgb.map((c) => linearOf(c / 255)) as unknown as LinearRgb
const BLACK = linear(0, 0, 0)

/** Two colours in turn, `cycles` times, each for half of a second's share. */
function square(one: LinearRgb, other: LinearRgb, hz: number, seconds = 3): LinearRgb[] {
  return Array.from({ length: (seconds * 1000) / STEP_MS }, (_, i) =>
    Math.floor((i * STEP_MS * hz * 2) / 1000) % 2 === 0 ? other : one,
  )
}

const general = (one: LinearRgb, other: LinearRgb, hz = 5) =>
  generalFlashes(square(one, other, hz), STEP_MS).flashes
const red = (one: LinearRgb, other: LinearRgb, hz = 5) =>
  redFlashes(square(one, other, hz), STEP_MS).flashes

describe('general flashes (WCAG 2.2, 2.3.1; cases worked out from the definition)', () => {
  test('three cycles in a second pass, four do not', () => {
    expect(general(linear(255, 255, 255), BLACK, 3)).toBe(MOST_FLASHES)
    expect(general(linear(255, 255, 255), BLACK, 4)).toBe(4)
  })

  test('a fourth flash is found wherever the second begins', () => {
    for (let shift = 0; shift < 1000; shift += 85) {
      const pause = Array<LinearRgb>(shift / STEP_MS).fill(BLACK)
      const flashes = square(linear(255, 255, 255), BLACK, 4, 1)
      const { flashes: count, atMs } = generalFlashes([...pause, ...flashes, BLACK], STEP_MS)
      expect(count).toBe(4)
      expect(atMs).toBe(shift + 125)
    }
  })

  test('green on and off is one, blue is not: it changes luminance by 0.0722 only', () => {
    expect(general(linear(0, 255, 0), BLACK)).toBe(5)
    expect(general(linear(0, 0, 255), BLACK)).toBe(0)
  })

  test('red on and off is one, and a red one too', () => {
    expect(general(linear(255, 0, 0), BLACK)).toBe(5)
    expect(red(linear(255, 0, 0), BLACK)).toBe(5)
  })

  test('grey 90 to black just is (0.1022), grey 89 just is not', () => {
    expect(general(linear(90, 90, 90), BLACK)).toBe(5)
    expect(general(linear(89, 89, 89), BLACK)).toBe(0)
  })

  test('white to grey 232 is none: the darker is not below 0.80', () => {
    expect(general(linear(255, 255, 255), linear(232, 232, 232))).toBe(0)
    expect(general(linear(255, 255, 255), linear(230, 230, 230))).toBe(5)
  })

  test('a rise in small steps is one change, however many steps', () => {
    const ramp = Array.from({ length: 200 }, (_, i) => i / 199)
    expect(changes(ramp, STEP_MS, 0.1, 0.8)).toHaveLength(1)
    const triangle = [...ramp, ...[...ramp].reverse(), ...ramp, ...[...ramp].reverse()]
    expect(changes(triangle, STEP_MS, 0.1, 0.8)).toHaveLength(4)
  })

  test('small wavering on a slow fade adds nothing', () => {
    const wavering = Array.from({ length: 1000 }, (_, i) => i / 2000 + 0.04 * (i % 2))
    expect(changes(wavering, STEP_MS, 0.1, 0.8)).toHaveLength(1)
  })

  test('a second is open at its end: changes 1000 ms apart are not in one', () => {
    expect(mostInASecond([0, 1000]).flashes).toBe(0.5)
    expect(mostInASecond([0, 999]).flashes).toBe(1)
  })
})

describe('red flashes (WCAG 2.2 note and the older definition)', () => {
  test.each([
    ['white', [255, 255, 255], 5],
    ['yellow', [255, 255, 0], 5],
    ['magenta', [255, 0, 255], 5],
    ['blue', [0, 0, 255], 5],
  ])('red and %s in turn count', (_, rgb, count) => {
    expect(red(linear(255, 0, 0), linear(...rgb))).toBe(count)
  })

  test("red and orange in turn are 0.1323 apart in u'v' but count by the older definition", () => {
    // (R - G - B) x 320 changes from 320 to 250.9: more than 20, both saturated red.
    expect(red(linear(255, 0, 0), linear(255, 128, 0))).toBe(5)
  })

  test('orange to black is a red flash: its linear red share is 0.8225', () => {
    expect(red(linear(255, 128, 0), BLACK)).toBe(5)
  })

  test('amber, whose share of red is below 0.8, is none', () => {
    expect(red(linear(255, 150, 0), BLACK)).toBe(0)
  })

  test('green and blue in turn are none', () => {
    expect(red(linear(0, 255, 0), linear(0, 0, 255))).toBe(0)
  })
})

describe('flashes of a bare LED', () => {
  const bare = (one: LinearRgb, other: LinearRgb) =>
    bareFlashes(square(one, other, 5), STEP_MS).flashes

  test('blue counts, and so does a dim light that goes out', () => {
    expect(bare([0, 0, 1], BLACK)).toBe(5)
    expect(bare([0.05, 0, 0], BLACK)).toBe(5)
    expect(bare([0.05, 0, 0], [0.04, 0, 0])).toBe(0)
  })

  test('bright wavering of a tenth counts, below it not', () => {
    expect(bare([1, 1, 1], [0.9, 0.9, 0.9])).toBe(5)
    expect(bare([1, 1, 1], [0.91, 0.91, 0.91])).toBe(0)
  })

  test('darkness does not flash', () => {
    expect(bare(BLACK, BLACK)).toBe(0)
  })
})
