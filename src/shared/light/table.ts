import {
  EASES,
  LIGHT_KINDS,
  LIGHT_RULES,
  type LightEffect,
  type LightKey,
  OWN_ANSWERS,
} from '../model/light'

/** `MVW_LIGHT_REST`: after an effect back to rest. */
export const REST = 255

/** Numbers of the effects in a table, as in `mvw_light.h`. */
export const IDLE = 0
export const REJECT = 1
export const LOW = 2
export const FIRST_GESTURE = OWN_ANSWERS.length

/** What the player is given: `mvw_light_table` with the effects' chains as numbers. */
export interface LightTable {
  /** Idle, reject, low cells, then one for each gesture. */
  effects: { effect: LightEffect; next: number }[]
  seed: number
  /** Most of all channels together, mA; 0 for none. */
  limitMa: number
  minChangeMs: number
  /** Current of each channel at full duty, whole mA. */
  fullMa: [number, number, number]
}

const HEAD_WORDS = 7
const EFFECT_WORDS = 15
const KEY_WORDS = 6

/** Keyframes of all effects in a row, and where each effect's begin. */
export function packKeys(table: LightTable): { keys: LightKey[]; first: number[] } {
  const keys: LightKey[] = []
  const first = table.effects.map(({ effect }) => {
    const start = effect.kind === 'keys' ? keys.length : 0
    if (effect.kind === 'keys') keys.push(...effect.keys)
    return start
  })
  return { keys, first }
}

/** Fields of an effect in the order of the port's words and of the struct's initialiser. */
export function effectFields(effect: LightEffect, next: number, firstKey: number): number[] {
  return [
    LIGHT_KINDS.indexOf(effect.kind),
    LIGHT_RULES.indexOf(effect.rule),
    next,
    effect.low,
    effect.high,
    ...effect.colour,
    effect.hue,
    effect.turn,
    effect.rounds,
    effect.periodMs,
    effect.fadeMs,
    firstKey,
    effect.kind === 'keys' ? effect.keys.length : 0,
  ]
}

export function keyFields(key: LightKey): number[] {
  return [key.atMs, key.level, ...key.colour, EASES.indexOf(key.ease)]
}

/** The words that `light_load` of `src/core/port/light_wasm.c` reads. */
export function tableWords(table: LightTable): { words: Uint16Array; keyCount: number } {
  const { keys, first } = packKeys(table)
  const size = HEAD_WORDS + table.effects.length * EFFECT_WORDS + keys.length * KEY_WORDS
  const words = new Uint16Array(size)
  words.set([
    table.seed & 0xffff,
    table.seed >>> 16,
    table.limitMa,
    table.minChangeMs,
    ...table.fullMa,
  ])
  table.effects.forEach(({ effect, next }, index) => {
    words.set(effectFields(effect, next, first[index] ?? 0), HEAD_WORDS + index * EFFECT_WORDS)
  })
  const keysAt = HEAD_WORDS + table.effects.length * EFFECT_WORDS
  keys.forEach((key, index) => {
    words.set(keyFields(key), keysAt + index * KEY_WORDS)
  })
  return { words, keyCount: keys.length }
}
