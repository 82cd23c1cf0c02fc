import type { LightEffect, LightKey } from '../model/light'
import { type Failure, fail, ok, type Result } from '../model/result'
import { LIGHT_TROUBLE } from '../words/en/light-trouble'

/** Limits of `mvw_light.h`. */
export const MAX_KEYS = 64
export const MIN_PERIOD_MS = 20
export const MIN_KEY_GAP_MS = MIN_PERIOD_MS / 2
export const MAX_MS = 65_535

/**
 * Checks an effect as `mvw_light_check` does, but says in words what is wrong and what to do.
 * @returns failures 'light/keys', 'light/key-time', 'light/period', 'light/levels', 'light/range'
 */
export function checkEffect(effect: LightEffect): Result<LightEffect> {
  const problem =
    (effect.kind === 'keys' ? keysProblem(effect.keys) : keysOutsideProblem(effect)) ??
    periodProblem(effect) ??
    rangeProblem(effect)
  return problem ?? ok(effect)
}

function keysOutsideProblem({ kind, keys }: LightEffect): Failure | null {
  if (keys.length === 0) return null
  return fail('light/keys', LIGHT_TROUBLE.noKeysAllowed(kind))
}

function keysProblem(keys: readonly LightKey[]): Failure | null {
  if (keys.length < 2 || keys.length > MAX_KEYS) {
    return fail('light/keys', LIGHT_TROUBLE.keyCount(keys.length, MAX_KEYS))
  }
  for (const [index, key] of keys.entries()) {
    const problem = keyProblem(key, index, keys[index - 1])
    if (problem !== null) return problem
  }
  return null
}

function keyProblem(key: LightKey, index: number, before?: LightKey): Failure | null {
  const number = index + 1
  const bytes = [key.level, ...key.colour]
  if (!Number.isInteger(key.atMs) || key.atMs < 0 || key.atMs > MAX_MS) {
    return fail('light/key-time', LIGHT_TROUBLE.keyTime(number, MAX_MS))
  }
  if (before === undefined) {
    if (key.atMs === 0) return null
    return fail('light/key-time', LIGHT_TROUBLE.firstKey(number, key.atMs))
  }
  if (key.atMs < before.atMs) {
    return fail('light/key-time', LIGHT_TROUBLE.keyOrder(number, key.atMs, before.atMs))
  }
  if (key.atMs - before.atMs < MIN_KEY_GAP_MS) {
    return fail(
      'light/key-time',
      LIGHT_TROUBLE.keyGap(number, key.atMs - before.atMs, MIN_KEY_GAP_MS),
    )
  }
  if (bytes.every(isByte)) return null
  return fail('light/range', LIGHT_TROUBLE.keyRange(number))
}

function periodProblem({ kind, periodMs, keys }: LightEffect): Failure | null {
  if (!Number.isInteger(periodMs) || periodMs < MIN_PERIOD_MS || periodMs > MAX_MS) {
    return fail(
      'light/period',
      LIGHT_TROUBLE.period({ periodMs, leastMs: MIN_PERIOD_MS, mostMs: MAX_MS }),
    )
  }
  const last = keys.at(-1)?.atMs
  if (kind !== 'keys' || last === periodMs) return null
  return fail('light/period', LIGHT_TROUBLE.roundEnd(periodMs, last ?? 0))
}

function rangeProblem(effect: LightEffect): Failure | null {
  const { low, high, colour, hue, turn, rounds, fadeMs } = effect
  if (![low, high, ...colour, hue, turn].every(isByte)) {
    return fail('light/range', LIGHT_TROUBLE.byteRange)
  }
  if (low > high) {
    return fail('light/levels', LIGHT_TROUBLE.levelsSwapped(low, high))
  }
  if ([rounds, fadeMs].every((value) => Number.isInteger(value) && value >= 0 && value <= MAX_MS)) {
    return null
  }
  return fail('light/range', LIGHT_TROUBLE.wholeMs(MAX_MS))
}

function isByte(value: number): boolean {
  return Number.isInteger(value) && value >= 0 && value <= 255
}
