import { DARK, defaultLight } from '../light/defaults'
import { SOUND_PRESETS, VIBRATION_PRESETS } from '../light/steps'
import type { Answer, Emission, LightEffect, LightKey, LightSettings } from '../model/light'
import { LIGHT_PRESETS } from '../words/en/light-presets'

/** Linear shares that add up to one channel at full. */
const AMBER: Emission = [165, 85, 5]
const MOON: Emission = [70, 85, 100]

const FADE_MS = 600

function answer(light: Partial<LightEffect>, sound = '', vibration = ''): Answer {
  return {
    light: { ...DARK, rounds: 1, fadeMs: FADE_MS, high: 204, ...light },
    sound: SOUND_PRESETS.find(({ name }) => name === sound)?.steps ?? [],
    vibration: VIBRATION_PRESETS.find(({ name }) => name === vibration)?.steps ?? [],
  }
}

const key = (atMs: number, level: number, colour: Emission): LightKey => ({
  atMs,
  level,
  colour,
  ease: 'smooth',
})

/** How the lanterns of the night parade answer, by movement: each kind of effect once or more. */
export const DEMO_ANSWERS: Record<string, Answer> = {
  raise: answer(
    { kind: 'steady', colour: AMBER, high: 242, periodMs: 4000 },
    LIGHT_PRESETS.risingPair,
  ),
  swing: answer({ kind: 'breathe', colour: [20, 150, 85], low: 60, periodMs: 2400, rounds: 2 }),
  ring: answer(
    { kind: 'sparkle', colour: MOON, low: 90, periodMs: 1500, rounds: 4 },
    LIGHT_PRESETS.bell,
  ),
  sweep: answer({ kind: 'hue', hue: 25, turn: 255, periodMs: 6000 }, LIGHT_PRESETS.threeUp),
  pour: answer({
    kind: 'keys',
    periodMs: 4200,
    keys: [
      key(0, 0, AMBER),
      key(900, 217, AMBER),
      key(2600, 150, [90, 60, 100]),
      key(4200, 0, [20, 60, 170]),
    ],
  }),
  knock: answer(
    { kind: 'steady', colour: [60, 40, 155], periodMs: 2100 },
    '',
    LIGHT_PRESETS.double,
  ),
  twist: answer({ kind: 'hue', hue: 150, turn: 60, periodMs: 3600, rounds: 2 }),
  bow: answer(
    { kind: 'steady', colour: AMBER, high: 110, periodMs: 5000 },
    LIGHT_PRESETS.fallingPair,
  ),
}

/** A candle at rest; a slow dim breath when the cells are low. */
export function demoLight(): LightSettings {
  const light = defaultLight()
  const candle: LightEffect = {
    ...DARK,
    kind: 'flicker',
    colour: AMBER,
    low: 96,
    high: 112,
    periodMs: 260,
  }
  return {
    ...light,
    answers: { ...light.answers, idle: { light: candle, sound: [], vibration: [] } },
  }
}
