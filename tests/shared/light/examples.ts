import { DARK, defaultAnswer, defaultLight } from '../../../src/shared/light/defaults'
import type { Gesture } from '../../../src/shared/model/library'
import type { Answer, LightEffect, LightSettings } from '../../../src/shared/model/light'

export function effect(change: Partial<LightEffect>): LightEffect {
  return {
    ...DARK,
    high: 255,
    rounds: 1,
    periodMs: 1000,
    fadeMs: 0,
    colour: [255, 255, 255],
    ...change,
  }
}

/** On and off in steps, `cycles` times in a second each. */
export function blinking(hz: number, colour: LightEffect['colour'], high = 255): LightEffect {
  const halfMs = Math.round(500 / hz)
  const key = (atMs: number, level: number) => ({ atMs, level, colour, ease: 'step' as const })
  return effect({
    kind: 'keys',
    rounds: 0,
    periodMs: 2 * halfMs,
    keys: [key(0, high), key(halfMs, 0), key(2 * halfMs, high)],
  })
}

export function answer(change: Partial<LightEffect>): Answer {
  return { ...defaultAnswer(0, 1), light: effect(change) }
}

/** A library's light with these answers of gestures, numbered from 3. */
export function lit(
  gestures: Partial<LightEffect>[],
  settings: Partial<LightSettings> = {},
): { gestures: Gesture[]; light: LightSettings } {
  const plain = defaultLight()
  return {
    gestures: gestures.map((change, index) => ({
      id: `g${index}`,
      name: `Gesture ${index}`,
      note: '',
      answer: answer(change),
    })),
    light: { ...plain, led: { ...plain.led, limitMa: 0 }, ...settings },
  }
}
