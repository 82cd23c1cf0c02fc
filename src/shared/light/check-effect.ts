import type { LightEffect, LightKey } from '../model/light'
import { type Failure, fail, ok, type Result } from '../model/result'

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
  return fail('light/keys', `An effect of kind "${kind}" has no keyframes; this one has some.`)
}

function keysProblem(keys: readonly LightKey[]): Failure | null {
  if (keys.length < 2 || keys.length > MAX_KEYS) {
    return fail(
      'light/keys',
      `An effect holds 2 to ${MAX_KEYS} keyframes, this one has ${keys.length}: ${keys.length < 2 ? 'add some' : 'remove some, or loop a shorter piece'}.`,
    )
  }
  for (const [index, key] of keys.entries()) {
    const problem = keyProblem(key, index, keys[index - 1])
    if (problem !== null) return problem
  }
  return null
}

function keyProblem(key: LightKey, index: number, before?: LightKey): Failure | null {
  const name = `Keyframe ${index + 1}`
  const bytes = [key.level, ...key.colour]
  if (!Number.isInteger(key.atMs) || key.atMs < 0 || key.atMs > MAX_MS) {
    return fail('light/key-time', `${name} needs a time from 0 to ${MAX_MS} ms, in whole ms.`)
  }
  if (before === undefined) {
    if (key.atMs === 0) return null
    return fail('light/key-time', `${name} is at ${key.atMs} ms: the first must be at 0 ms.`)
  }
  if (key.atMs < before.atMs) {
    return fail(
      'light/key-time',
      `${name} is at ${key.atMs} ms, before keyframe ${index} at ${before.atMs} ms: put them in order of time.`,
    )
  }
  if (key.atMs - before.atMs < MIN_KEY_GAP_MS) {
    return fail(
      'light/key-time',
      `${name} comes ${key.atMs - before.atMs} ms after the one before: leave at least ${MIN_KEY_GAP_MS} ms.`,
    )
  }
  if (bytes.every(isByte)) return null
  return fail('light/range', `${name} has a brightness or colour outside of 0 to 255.`)
}

function periodProblem({ kind, periodMs, keys }: LightEffect): Failure | null {
  if (!Number.isInteger(periodMs) || periodMs < MIN_PERIOD_MS || periodMs > MAX_MS) {
    return fail(
      'light/period',
      `A round takes ${MIN_PERIOD_MS} to ${MAX_MS} ms, this one ${periodMs} ms: make it longer or shorter.`,
    )
  }
  const last = keys.at(-1)?.atMs
  if (kind !== 'keys' || last === periodMs) return null
  return fail(
    'light/period',
    `The round ends at ${periodMs} ms but the last keyframe at ${last} ms.`,
  )
}

function rangeProblem(effect: LightEffect): Failure | null {
  const { low, high, colour, hue, turn, rounds, fadeMs } = effect
  if (![low, high, ...colour, hue, turn].every(isByte)) {
    return fail('light/range', 'Brightness, colour and hue are whole numbers from 0 to 255.')
  }
  if (low > high) {
    return fail(
      'light/levels',
      `The dimmest is brighter than the brightest (${low} and ${high}): swap them.`,
    )
  }
  if ([rounds, fadeMs].every((value) => Number.isInteger(value) && value >= 0 && value <= MAX_MS)) {
    return null
  }
  return fail('light/range', `Rounds and fade are whole numbers from 0 to ${MAX_MS}.`)
}

function isByte(value: number): boolean {
  return Number.isInteger(value) && value >= 0 && value <= 255
}
