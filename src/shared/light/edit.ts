import type { Answer, LightEffect, LightKey, LightKind } from '../model/light'
import { MAX_KEYS, MAX_MS, MIN_KEY_GAP_MS } from './check-effect'
import { type LightOwner, lightOf } from './library-light'

/** A library with another answer to one key; it is not stored. */
export function withAnswer(library: LightOwner, key: string, answer: Answer): LightOwner {
  const light = lightOf(library)
  if (key === 'idle' || key === 'reject' || key === 'low') {
    return { ...library, light: { ...light, answers: { ...light.answers, [key]: answer } } }
  }
  const gestures = library.gestures.map((one) => (one.id === key ? { ...one, answer } : one))
  return { ...library, gestures, light }
}

/** What an effect of a kind starts from; slow enough that none of them flashes. */
const STARTS: Partial<Record<LightKind, Partial<LightEffect>>> = {
  breathe: { low: 40, periodMs: 3000 },
  // A flame wavers about a tenth of its light, so its waves are no flashes.
  flicker: { low: 160, high: 180, periodMs: 240 },
  sparkle: { low: 60, periodMs: 1500 },
  hue: { turn: 255, periodMs: 6000 },
}

/** The effect as another kind, with figures that suit it where the old ones mean something else. */
export function withKind(effect: LightEffect, kind: LightKind): LightEffect {
  if (kind === effect.kind) return effect
  const high = effect.high === 0 ? 204 : effect.high
  const colour = effect.colour.some((share) => share > 0) ? effect.colour : ([85, 85, 85] as const)
  const base: LightEffect = { ...effect, kind, keys: [], high, colour: [...colour], low: 0 }
  if (kind !== 'keys') return { ...base, ...STARTS[kind] }
  const key = (atMs: number, level: number): LightKey => ({
    atMs,
    level,
    colour: [...colour],
    ease: 'smooth',
  })
  return { ...base, keys: [key(0, 0), key(800, high), key(2400, 0)], periodMs: 2400 }
}

function keyed(effect: LightEffect, keys: LightKey[]): LightEffect {
  return { ...effect, keys, periodMs: keys.at(-1)?.atMs ?? effect.periodMs }
}

export function changeKey(
  effect: LightEffect,
  index: number,
  change: Partial<LightKey>,
): LightEffect {
  return keyed(
    effect,
    effect.keys.map((key, i) => (i === index ? { ...key, ...change } : key)),
  )
}

/** Moves a keyframe between its neighbours; the first stays at 0, the last takes the end along. */
export function moveKey(effect: LightEffect, index: number, atMs: number): LightEffect {
  const before = effect.keys[index - 1]
  if (before === undefined) return effect
  const after = effect.keys[index + 1]
  const low = before.atMs + MIN_KEY_GAP_MS
  const high = after === undefined ? MAX_MS : after.atMs - MIN_KEY_GAP_MS
  return changeKey(effect, index, { atMs: Math.min(Math.max(Math.round(atMs), low), high) })
}

/** A copy of a keyframe halfway to the next, or half a second after the last; null when full. */
export function copyKey(effect: LightEffect, index: number): LightEffect | null {
  const key = effect.keys[index]
  if (key === undefined || effect.keys.length >= MAX_KEYS) return null
  const next = effect.keys[index + 1]
  const atMs = next === undefined ? key.atMs + 500 : Math.round((key.atMs + next.atMs) / 2)
  if (atMs > MAX_MS || atMs - key.atMs < MIN_KEY_GAP_MS) return null
  if (next !== undefined && next.atMs - atMs < MIN_KEY_GAP_MS) return null
  return keyed(effect, [
    ...effect.keys.slice(0, index + 1),
    { ...key, colour: [...key.colour], atMs },
    ...effect.keys.slice(index + 1),
  ])
}

/** Takes a keyframe out; the one that becomes the first moves to 0. Null when two are left. */
export function removeKey(effect: LightEffect, index: number): LightEffect | null {
  if (effect.keys.length <= 2) return null
  const left = effect.keys.filter((_, i) => i !== index)
  const start = left[0]?.atMs ?? 0
  return keyed(
    effect,
    left.map((key) => ({ ...key, atMs: key.atMs - start })),
  )
}
