import { beforeAll, describe, expect, test } from 'vitest'
import { loadLightForNode } from '../../../src/build/load-core'
import { mend, mendsFor } from '../../../src/shared/light/mend'
import type { LightPlayer } from '../../../src/shared/light/player'
import { checkAnswer, checkPwm, lightFindings } from '../../../src/shared/light/safety'
import { mayShowLive } from '../../../src/shared/light/show-live'
import type { Gesture } from '../../../src/shared/model/library'
import type { LightEffect, LightKey } from '../../../src/shared/model/light'
import { blinking, effect, lit } from './examples'

let player: LightPlayer
beforeAll(async () => {
  player = await loadLightForNode()
})

/** Counts by rule of the first gesture's answer. */
function counts(light: LightEffect, settings: Parameters<typeof lit>[1] = {}) {
  const found = checkAnswer(player, lit([light], settings), 'g0')
  return Object.fromEntries(found.map(({ rule, value }) => [rule, value]))
}

describe('effects over a limit', () => {
  test('white blinking at 3 Hz passes, at 4 Hz it does not', () => {
    expect(counts(blinking(3, [255, 255, 255]))['general-flash']).toBe(3)
    expect(counts(blinking(4, [255, 255, 255]))['general-flash']).toBe(4)
  })

  test('red counts as red, blue only as a bare LED', () => {
    expect(counts(blinking(5, [255, 0, 0]))).toEqual({
      'general-flash': 5,
      'red-flash': 5,
      'bare-led': 5,
    })
    expect(counts(blinking(5, [0, 0, 255]))).toEqual({
      'general-flash': 0,
      'red-flash': 0,
      'bare-led': 5,
    })
  })

  test('a chain is looked at as a whole: each round is slow, together they are not', () => {
    const quick = { kind: 'keys', rounds: 1, fadeMs: 0 } as const
    const key = (atMs: number, level: number): LightKey => ({
      atMs,
      level,
      colour: [255, 255, 255],
      ease: 'step',
    })
    const pulse = effect({ ...quick, periodMs: 200, keys: [key(0, 255), key(100, 0), key(200, 0)] })
    const alone = lit([pulse])
    expect(checkAnswer(player, alone, 'g0').every(({ passes }) => passes)).toBe(true)
    const chained = lit([
      { ...pulse, next: 'g1' },
      { ...pulse, next: 'g0' },
    ])
    const [general] = checkAnswer(player, chained, 'g0')
    expect(general).toMatchObject({ passes: false, value: 5, limit: 3 })
  })

  test('answers in quick turn are looked at: the least time between changes is what saves them', () => {
    const steady = (colour: LightEffect['colour']) => effect({ kind: 'steady', colour, fadeMs: 50 })
    const pair = [steady([255, 255, 255]), { ...steady([40, 40, 40]) }]
    const hasty = checkAnswer(player, lit(pair, { minChangeMs: 60 }), 'g0')
    expect(hasty[0]).toMatchObject({ passes: false, where: expect.stringContaining('Gesture 1') })
    const calm = checkAnswer(player, lit(pair, { minChangeMs: 600 }), 'g0')
    expect(calm.every(({ passes }) => passes)).toBe(true)
  })

  test('each finding names number, limit and source', () => {
    const [general] = checkAnswer(player, lit([blinking(5, [255, 255, 255])]), 'g0')
    expect(general?.sentence).toBe('"Gesture 0": 5 flashes in a second, 3 are the limit.')
    expect(general?.source).toContain('WCAG 2.2')
  })
})

describe('what the app makes by itself', () => {
  test('never is over a limit, for one gesture or for many', () => {
    for (const count of [1, 3, 12]) {
      const gestures: Gesture[] = Array.from({ length: count }, (_, i) => ({
        id: `g${i}`,
        name: `G${i}`,
        note: '',
      }))
      expect(lightFindings(player, { gestures })).toEqual([])
    }
  })
})

describe('PWM', () => {
  const at = (pwmHz: number) => {
    const library = lit([])
    library.light.led.pwmHz = pwmHz
    return checkPwm(library)
  }

  test('490 Hz and 976 Hz, which timers often start with, fail; 1250 Hz passes', () => {
    expect(at(490)).toMatchObject({ passes: false, limit: expect.closeTo(39.2, 9) })
    expect(at(976.5625).passes).toBe(false)
    expect(at(1250).passes).toBe(true)
    expect(at(1250).sentence).toContain('low risk')
    expect(at(3003).sentence).toContain('no observable effect')
  })
})

describe('a mend', () => {
  const safe = (light: LightEffect) =>
    checkAnswer(player, lit([light]), 'g0').every(({ passes }) => passes)

  test.each(['slow', 'soften'] as const)('%s brings white blinking within the limit', (kind) => {
    const mended = mend(blinking(8, [255, 255, 255]), kind, safe)
    expect(mended).not.toBeNull()
    expect(safe(mended!)).toBe(true)
  })

  test('of red keeps its time and takes red below 0.8 of the light', () => {
    const red = { ...blinking(2, [255, 0, 0]), rounds: 0 }
    const isRedSafe = (light: LightEffect) =>
      checkAnswer(player, lit([light]), 'g0').find(({ rule }) => rule === 'red-flash')!.value === 0
    expect(isRedSafe(red)).toBe(false)
    const mended = mend(red, 'less-red', isRedSafe)
    expect(mended?.periodMs).toBe(red.periodMs)
    const [r = 0, g = 0, b = 0] = mended?.keys[0]?.colour ?? []
    expect(r / (r + g + b)).toBeLessThan(0.8)
  })

  test('is offered that helps: less red only against red, slower against all', () => {
    const [general, red] = checkAnswer(player, lit([blinking(5, [255, 0, 0])]), 'g0')
    expect(mendsFor(general!, blinking(5, [255, 0, 0]))).toEqual(['slow', 'soften'])
    expect(mendsFor(red!, blinking(5, [255, 0, 0]))).toEqual(['less-red', 'slow'])
  })

  test('that cannot help says so', () => {
    expect(mend(blinking(5, [9, 9, 9]), 'less-red', () => false)).toBeNull()
  })
})

describe('light while gestures come as they will', () => {
  test('is shown when no effect flashes by itself and changes keep their distance', () => {
    const calm = lit([{ kind: 'breathe', periodMs: 2000 }], { minChangeMs: 600 })
    expect(mayShowLive(player, calm)).toBe(true)
    expect(mayShowLive(player, lit([{ kind: 'breathe' }], { minChangeMs: 100 }))).toBe(false)
    const hasty = lit([blinking(6, [0, 0, 255])], { minChangeMs: 600 })
    expect(mayShowLive(player, hasty)).toBe(false)
  })
})
