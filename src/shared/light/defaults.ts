import type { Answer, LightEffect, LightSettings } from '../model/light'
import { defaultLed, defaultPower } from '../power/defaults'
import { gestureColour } from './colour-wheel'

/** From the light as it is to a gesture's: slow enough that two changes never make a flash a second. */
const FADE_MS = 600
const HOLD_MS = 1500
const FADE_OUT_MS = 1200

/** L* 80 of 100: a little below the brightest, which is left for sparkle. */
const LEVEL = 204

export const DARK: LightEffect = {
  kind: 'off',
  rule: 'at-once',
  next: null,
  low: 0,
  high: 0,
  colour: [0, 0, 0],
  hue: 0,
  turn: 255,
  rounds: 0,
  periodMs: 1000,
  fadeMs: FADE_OUT_MS,
  keys: [],
}

/** Answer of a gesture that was given none: its own colour, faded in, held, let go dark slowly. */
export function defaultAnswer(gesture: number, gestures: number): Answer {
  return {
    light: {
      ...DARK,
      kind: 'steady',
      high: LEVEL,
      colour: gestureColour(gesture, Math.max(1, gestures)),
      rounds: 1,
      periodMs: FADE_MS + HOLD_MS,
      fadeMs: FADE_MS,
    },
    sound: [],
    vibration: [],
  }
}

/** Amber, as low cells still feed red and green when blue has gone out. */
const LOW_EFFECT: LightEffect = {
  ...DARK,
  kind: 'breathe',
  colour: [170, 85, 0],
  high: 90,
  periodMs: 4000,
}

const SILENT = { sound: [], vibration: [] }

/** Dark at rest, no answer to a rejected movement, a slow dim breath when the cells are low. */
export function defaultLight(): LightSettings {
  return {
    answers: {
      idle: { light: { ...DARK }, ...SILENT },
      reject: { light: { ...DARK }, ...SILENT },
      low: { light: { ...LOW_EFFECT }, ...SILENT },
    },
    minChangeMs: FADE_MS,
    led: defaultLed(),
    power: defaultPower(),
    acknowledgement: null,
  }
}
