import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { loadLightForNode } from '../../src/build/load-core'
import { lightTable } from '../../src/shared/light/library-light'
import type { LightPlayer } from '../../src/shared/light/player'
import { FIRST_GESTURE, IDLE, LOW } from '../../src/shared/light/table'
import type { LightEffect, LightSettings } from '../../src/shared/model/light'
import { effect, lit } from '../shared/light/examples'

let player: LightPlayer
beforeAll(async () => {
  player = await loadLightForNode()
})

function load(gestures: Partial<LightEffect>[], settings: Partial<LightSettings> = {}): void {
  player.load(lightTable(lit(gestures, { minChangeMs: 0, ...settings })))
}

const start = (gesture: number) => player.start(FIRST_GESTURE + gesture)
/** Duty of red after each of `count` ticks. */
const reds = (ms: number, count: number) =>
  Array.from(player.ticks(ms, count)).filter((_, i) => i % 3 === 0)
const white: LightEffect['colour'] = [255, 255, 255]

/** CIE 15: Y = ((L + 16) / 116)^3 above L* = 8, L 27 / 24389 below. */
const cie = (lightness: number) =>
  lightness > 8 ? ((lightness + 16) / 116) ** 3 : (lightness * 27) / 24389

describe('lightness', () => {
  it('is CIE 1976 at each of 256 levels, rounded to 16 bits', () => {
    for (let i = 0; i < 256; i++) {
      expect(player.luminance(i)).toBe(Math.round(65535 * cie((100 * i) / 255)))
    }
  })

  it('gives the published values at L* 20, 60 and 100, which are whole levels', () => {
    // colorjs.io and culori agree with CIE 15; Y(20) = 0.02989052.
    expect(player.luminance(51)).toBe(1959)
    expect(player.luminance(255)).toBe(65535)
    expect(player.luminance(153) / 65535).toBeCloseTo(cie(60), 4)
  })

  it('leaves 174 distinct values of an 8-bit timer, 236 of 10 bits, all 256 of 12', () => {
    const distinct = (bits: number) =>
      new Set(Array.from({ length: 256 }, (_, i) => player.pwm(player.luminance(i), bits))).size
    expect([distinct(8), distinct(10), distinct(12)]).toEqual([174, 236, 256])
  })

  it('has the 8-bit table that the formula gives', () => {
    const at = (i: number) => player.pwm(player.luminance(i), 8)
    expect([0, 8, 16, 32, 64, 96, 128, 160, 192, 224, 254, 255].map(at)).toEqual([
      0, 1, 2, 4, 11, 25, 47, 80, 124, 183, 252, 255,
    ])
    expect(Array.from({ length: 256 }, (_, i) => at(i)).filter((value) => value === 0).length).toBe(
      5,
    )
  })

  it('never falls between levels', () => {
    let before = 0
    for (let i = 0; i <= 255 * 16; i++) {
      const now = player.luminance(i / 16)
      expect(now).toBeGreaterThanOrEqual(before)
      before = now
    }
  })
})

describe('time', () => {
  it('cut into any ticks gives the same light', () => {
    const kinds = ['steady', 'breathe', 'flicker', 'sparkle', 'hue'] as const
    const any = fc.record({
      kind: fc.constantFrom(...kinds),
      periodMs: fc.integer({ min: 20, max: 700 }),
      rounds: fc.integer({ min: 0, max: 4 }),
      fadeMs: fc.integer({ min: 0, max: 900 }),
      next: fc.constantFrom(null, 'g0', 'g1', 'reject'),
      rule: fc.constantFrom('at-once' as const, 'after-round' as const),
    })
    const ticks = fc.array(fc.integer({ min: 0, max: 400 }), { minLength: 1, maxLength: 30 })
    fc.assert(
      fc.property(any, any, ticks, ticks, (first, second, before, after) => {
        const run = (cut: (ms: number[]) => number[]) => {
          load([first, second], { minChangeMs: 120 })
          start(0)
          for (const ms of cut(before)) player.ticks(ms, 1)
          start(1)
          for (const ms of cut(after)) player.ticks(ms, 1)
          return [player.playing(), ...player.ticks(0, 1)]
        }
        const total = (ms: number[]) => [ms.reduce((sum, one) => sum + one, 0)]
        const single = (ms: number[]) => Array<number>(total(ms)[0] ?? 0).fill(1)
        expect(run((ms) => ms)).toEqual(run(total))
        expect(run((ms) => ms)).toEqual(run(single))
      }),
      { numRuns: 60 },
    )
  })

  it('a steady light fades in, holds, and goes out by the fade of the rest', () => {
    load([{ kind: 'steady', colour: white, fadeMs: 600, periodMs: 2100 }])
    start(0)
    const red = reds(100, 40)
    expect([red[2], red[5], red[20]]).toEqual([32767, 65535, 65535])
    // Rest fades over 1200 ms from 2100 ms on.
    expect(red[26]).toBe(32768)
    expect(red[32]).toBe(0)
  })

  it('keyframes pass as their easing says', () => {
    const eases = ['step', 'linear', 'smooth', 'in', 'out'] as const
    const middle = eases.map((ease) => {
      const keys = [0, 1000].map((atMs) => ({
        atMs,
        level: atMs === 0 ? 0 : 255,
        colour: white,
        ease,
      }))
      load([{ kind: 'keys', keys, periodMs: 1000, rounds: 0 }])
      start(0)
      // A quarter of the way: u = 0, 1/4, 5/32, 1/16, 7/16 of 255 levels.
      return reds(250, 1)[0] ?? 0
    })
    const expected = [0, 1 / 4, 5 / 32, 1 / 16, 7 / 16].map((u) => 65535 * cie(100 * u))
    expected.forEach((value, i) => {
      expect(Math.abs((middle[i] ?? 0) - value)).toBeLessThanOrEqual(2)
    })
  })

  it('breathes between its levels, darkest at the start and brightest in the middle', () => {
    load([{ kind: 'breathe', low: 51, high: 255, periodMs: 1000, rounds: 0 }])
    start(0)
    player.ticks(0, 1)
    const red = reds(10, 100)
    expect(Math.max(...red)).toBe(red[49])
    expect(red[49]).toBe(65535)
    expect(red[99]).toBe(1959)
  })

  it('flame and sparkle stay between their levels and repeat for the same seed', () => {
    for (const kind of ['flicker', 'sparkle'] as const) {
      const run = () => {
        load([{ kind, low: 51, high: 153, periodMs: 300, rounds: 0 }])
        start(0)
        return reds(10, 3000)
      }
      const red = run()
      expect(Math.min(...red)).toBeGreaterThanOrEqual(1959)
      expect(Math.max(...red)).toBeLessThanOrEqual(player.luminance(153))
      expect(new Set(red).size).toBeGreaterThan(50)
      expect(run()).toEqual(red)
    }
  })

  it('walks round the wheel with the current of one channel', () => {
    load([{ kind: 'hue', hue: 0, turn: 255, periodMs: 3000, rounds: 0 }])
    start(0)
    const duty = player.ticks(10, 300)
    for (let i = 0; i < duty.length; i += 3) {
      const sum = (duty[i] ?? 0) + (duty[i + 1] ?? 0) + (duty[i + 2] ?? 0)
      expect(sum).toBeGreaterThan(65535 * 0.99)
      expect(sum).toBeLessThanOrEqual(65537)
    }
    // A third of the way: green; two thirds: blue.
    expect(
      Array.from(duty.slice(99 * 3, 100 * 3)).map((value) => Math.round(value / 6553)),
    ).toEqual([0, 10, 0])
  })
})

describe('what is asked for', () => {
  const long = { kind: 'steady', periodMs: 1000, rounds: 2 } as const

  it('starts at once at rest', () => {
    load([long])
    expect(player.playing()).toBe(IDLE)
    expect(start(0)).toBe('started')
    expect(player.playing()).toBe(FIRST_GESTURE)
  })

  it('waits for the end of the round, where the last one asked for comes', () => {
    load([{ ...long, rule: 'after-round' }, long, long])
    start(0)
    player.ticks(300, 1)
    expect(start(1)).toBe('waits')
    expect(start(2)).toBe('waits')
    player.ticks(699, 1)
    expect(player.playing()).toBe(FIRST_GESTURE)
    player.ticks(1, 1)
    expect(player.playing()).toBe(FIRST_GESTURE + 2)
  })

  it('is not taken before the end of an effect that plays to its end', () => {
    load([{ ...long, rule: 'to-end' }, long])
    start(0)
    expect(start(1)).toBe('not-taken')
    player.ticks(2000, 1)
    expect(player.playing()).toBe(IDLE)
    expect(start(1)).toBe('started')
  })

  it('comes no sooner than the least time after the last change', () => {
    load([long, long], { minChangeMs: 600 })
    player.ticks(600, 1)
    expect(start(0)).toBe('started')
    player.ticks(100, 1)
    expect(start(1)).toBe('waits')
    player.ticks(499, 1)
    expect(player.playing()).toBe(FIRST_GESTURE)
    player.ticks(1, 1)
    expect(player.playing()).toBe(FIRST_GESTURE + 1)
  })

  it('is not taken when it is dark: a rejected movement leaves the light as it is', () => {
    load([long])
    start(0)
    expect(player.start(1)).toBe('not-taken')
    expect(player.playing()).toBe(FIRST_GESTURE)
  })

  it('chains to the next and ends at rest', () => {
    load([
      { ...long, next: 'g1' },
      { ...long, rounds: 1 },
    ])
    start(0)
    player.ticks(2000, 1)
    expect(player.playing()).toBe(FIRST_GESTURE + 1)
    player.ticks(1000, 1)
    expect(player.playing()).toBe(IDLE)
  })

  it('low cells change the rest, now or after the answer', () => {
    load([long])
    player.low(true)
    expect(player.playing()).toBe(LOW)
    start(0)
    player.low(false)
    expect(player.playing()).toBe(FIRST_GESTURE)
    player.ticks(2000, 1)
    expect(player.playing()).toBe(IDLE)
  })
})

describe('current', () => {
  it('of all channels together stays below the limit, with the hue kept', () => {
    const library = lit([{ kind: 'steady', colour: [255, 128, 64], rounds: 0 }])
    library.light.led.limitMa = 7
    library.light.led.emitters = library.light.led.emitters.map((emitter, i) => ({
      ...emitter,
      currentMa: [20, 15, 10][i] ?? 0,
    })) as LightSettings['led']['emitters']
    player.load(lightTable(library))
    player.ticks(600, 1)
    start(0)
    const [red = 0, green = 0, blue = 0] = player.ticks(700, 1)
    const ma = (red * 20 + green * 15 + blue * 10) / 65535
    expect(ma).toBeLessThanOrEqual(7)
    expect(ma).toBeGreaterThan(6.99)
    expect(green / red).toBeCloseTo(128 / 255, 2)
    expect(blue / red).toBeCloseTo(64 / 255, 2)
  })
})

describe('a table that is not sound', () => {
  const key = (atMs: number) => ({ atMs, level: 9, colour: white, ease: 'linear' as const })
  const bad: [string, Partial<LightEffect>][] = [
    ['a round of 0 ms', { kind: 'steady', periodMs: 0 }],
    ['levels the wrong way round', { kind: 'breathe', low: 9, high: 8 }],
    ['one keyframe', { kind: 'keys', periodMs: 20, keys: [key(0)] }],
    ['keyframes out of order', { kind: 'keys', periodMs: 20, keys: [key(0), key(60), key(20)] }],
    ['keyframes too near', { kind: 'keys', periodMs: 29, keys: [key(0), key(20), key(29)] }],
    ['a first keyframe that is late', { kind: 'keys', periodMs: 40, keys: [key(10), key(40)] }],
    ['a last keyframe before the end', { kind: 'keys', periodMs: 50, keys: [key(0), key(40)] }],
    [
      '65 keyframes',
      { kind: 'keys', periodMs: 640, keys: Array.from({ length: 65 }, (_, i) => key(i * 10)) },
    ],
  ]
  it.each(bad)('is refused: %s', (_, change) => {
    expect(() => load([change])).toThrow()
    expect(effect(change).kind).toBe(change.kind)
  })
})
