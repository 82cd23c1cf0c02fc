import { beforeAll, describe, expect, test } from 'vitest'
import { loadLightForNode } from '../../../src/build/load-core'
import { checkEffect } from '../../../src/shared/light/check-effect'
import { DARK } from '../../../src/shared/light/defaults'
import {
  changeKey,
  copyKey,
  moveKey,
  removeKey,
  withAnswer,
  withKind,
} from '../../../src/shared/light/edit'
import { answerOf, lightOf } from '../../../src/shared/light/library-light'
import { safePace } from '../../../src/shared/light/pace'
import type { LightPlayer } from '../../../src/shared/light/player'
import { checkAnswer } from '../../../src/shared/light/safety'
import {
  notesOf,
  parseSteps,
  SOUND_PRESETS,
  stepsText,
  VIBRATION_PRESETS,
  vibrationPattern,
} from '../../../src/shared/light/steps'
import { LIGHT_KINDS } from '../../../src/shared/model/light'
import { answer, blinking, effect, lit } from './examples'

let player: LightPlayer
beforeAll(async () => {
  player = await loadLightForNode()
})

describe('another kind', () => {
  test.each(LIGHT_KINDS)('%s is sound and does not flash, from every other kind', (kind) => {
    for (const from of LIGHT_KINDS) {
      const before = withKind(withKind({ ...DARK, rounds: 3 }, from), from)
      const after = withKind(before, kind)
      expect(checkEffect(after).ok).toBe(true)
      const findings = checkAnswer(player, lit([after], { minChangeMs: 600 }), 'g0')
      expect(findings.filter(({ passes }) => !passes)).toEqual([])
    }
  })
})

describe('keyframes', () => {
  const keys = withKind(effect({ kind: 'steady' }), 'keys')
  const times = (of: { keys: { atMs: number }[] }) => of.keys.map(({ atMs }) => atMs)

  test('move between their neighbours; the first stays, the last takes the end along', () => {
    expect(times(keys)).toEqual([0, 800, 2400])
    expect(times(moveKey(keys, 1, 9000))).toEqual([0, 2390, 2400])
    expect(times(moveKey(keys, 1, -5))).toEqual([0, 10, 2400])
    expect(moveKey(keys, 0, 500)).toBe(keys)
    expect(moveKey(keys, 2, 5000)).toMatchObject({ periodMs: 5000 })
    expect(changeKey(keys, 1, { level: 7 }).keys[1]).toMatchObject({ level: 7, atMs: 800 })
  })

  test('are copied halfway to the next, the last half a second on, while there is room', () => {
    expect(times(copyKey(keys, 0)!)).toEqual([0, 400, 800, 2400])
    expect(copyKey(keys, 2)).toMatchObject({ periodMs: 2900 })
    expect(copyKey(moveKey(keys, 1, 15), 0)).toBeNull()
    let full = keys
    for (let i = 0; i < 100; i++) full = copyKey(full, full.keys.length - 1) ?? full
    expect(full.keys).toHaveLength(64)
    expect(checkEffect(full).ok).toBe(true)
  })

  test('are taken out down to two; the new first starts the round', () => {
    expect(times(removeKey(keys, 0)!)).toEqual([0, 1600])
    expect(removeKey(removeKey(keys, 1)!, 1)).toBeNull()
  })
})

test('an answer takes the place of one gesture’s, or of one of its own', () => {
  const library = lit([{ kind: 'steady' }, { kind: 'hue' }])
  const changed = withAnswer(library, 'g1', answer({ kind: 'sparkle' }))
  expect(answerOf(changed.gestures, 'g1').light.kind).toBe('sparkle')
  expect(answerOf(changed.gestures, 'g0').light.kind).toBe('steady')
  const idle = withAnswer(library, 'idle', answer({ kind: 'breathe' }))
  expect(lightOf(idle).answers.idle.light.kind).toBe('breathe')
})

test('what is over three flashes a second is shown so slowly that it is not', () => {
  const findings = checkAnswer(player, lit([blinking(8, [255, 255, 255])]), 'g0')
  const pace = safePace(findings)
  expect(8 * pace).toBeLessThanOrEqual(3)
  expect(safePace(checkAnswer(player, lit([blinking(2, [255, 255, 255])]), 'g0'))).toBe(1)
})

describe('tunes and vibrations', () => {
  test('are read from text and written back', () => {
    const read = parseSteps('523 90, 0 40,784 140', 20_000)
    expect(read.ok && read.value).toEqual([
      { value: 523, ms: 90 },
      { value: 0, ms: 40 },
      { value: 784, ms: 140 },
    ])
    expect(read.ok && stepsText(read.value)).toBe('523 90, 0 40, 784 140')
    expect(parseSteps('  ', 255)).toEqual({ ok: true, value: [] })
  })

  test('that are wrong are refused with the step', () => {
    expect(parseSteps('523 90, 300 x', 20_000)).toMatchObject({
      message: 'Step 2 ("300 x") must be two whole numbers, 0 to 20000 and 1 to 10000 ms.',
    })
    for (const text of ['1', '1 0', '256 5', '-1 5', '1 2 3', '1.5 5']) {
      expect(parseSteps(text, 255)).toMatchObject({ code: 'steps/step' })
    }
    expect(parseSteps(Array(65).fill('1 1').join(','), 255)).toMatchObject({ code: 'steps/count' })
  })

  test('become on and off times for a phone, which knows no strength', () => {
    const pattern = (text: string) => {
      const read = parseSteps(text, 255)
      return read.ok ? vibrationPattern(read.value) : null
    }
    expect(pattern('200 60, 0 80, 200 60')).toEqual([60, 80, 60])
    expect(pattern('80 120, 160 120, 255 160')).toEqual([400])
    expect(pattern('0 50, 9 20')).toEqual([0, 50, 20])
    expect(pattern('')).toEqual([])
  })

  test('have their notes at the times their steps add up to', () => {
    const bell = SOUND_PRESETS.find(({ name }) => name === 'Bell')!
    expect(notesOf(bell.steps)).toEqual([
      { hz: 1047, atMs: 0, ms: 60 },
      { hz: 1047, atMs: 80, ms: 220 },
    ])
  })

  test('offered to start from are within their ranges', () => {
    for (const { steps } of SOUND_PRESETS)
      expect(parseSteps(stepsText(steps), 20_000).ok).toBe(true)
    for (const { steps } of VIBRATION_PRESETS) {
      expect(parseSteps(stepsText(steps), 255).ok).toBe(true)
    }
  })
})
