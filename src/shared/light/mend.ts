import type { Emission, LightEffect, LightKey } from '../model/light'
import { MAX_MS } from './check-effect'
import type { SafetyFinding } from './safety'

export type MendKind = 'slow' | 'soften' | 'less-red'

/** Mends that help against a finding, the first first. */
export function mendsFor(finding: SafetyFinding, effect: LightEffect): MendKind[] {
  if (finding.rule === 'pwm') return []
  if (finding.rule !== 'red-flash') return ['slow', 'soften']
  return effect.kind === 'hue' ? ['slow'] : ['less-red', 'slow']
}

/** Steps tried; each changes by about a seventh, so together by more than a hundredfold. */
const MOST_STEPS = 40
const STEP = 1.15

/**
 * Changes an effect by small steps until it is within the limit.
 * @param isSafe asks the safety check
 * @returns null when no step gets there, as when another effect is to blame
 */
export function mend(
  effect: LightEffect,
  kind: MendKind,
  isSafe: (effect: LightEffect) => boolean,
): LightEffect | null {
  let candidate = effect
  for (let step = 0; step < MOST_STEPS; step++) {
    candidate = STEPS[kind](candidate)
    if (isSafe(candidate)) return candidate
  }
  return null
}

const STEPS: Record<MendKind, (effect: LightEffect) => LightEffect> = {
  slow: slower,
  soften: softer,
  'less-red': lessRed,
}

/** All times stretched; whole ms, so that a step is never lost to rounding. */
function slower(effect: LightEffect): LightEffect {
  const stretch = (ms: number) => Math.ceil(ms * STEP)
  if (effect.kind !== 'keys') {
    const periodMs = Math.min(MAX_MS, stretch(effect.periodMs))
    return { ...effect, periodMs, fadeMs: Math.min(MAX_MS, stretch(effect.fadeMs)) }
  }
  const keys = effect.keys.map((key) => ({ ...key, atMs: stretch(key.atMs) }))
  const periodMs = keys.at(-1)?.atMs ?? effect.periodMs
  return periodMs > MAX_MS ? effect : { ...effect, keys, periodMs }
}

/** Less contrast: the dark lifted towards the bright, jumps made smooth. */
function softer(effect: LightEffect): LightEffect {
  const lift = (level: number, high: number) => high - Math.floor((high - level) / STEP)
  if (effect.kind !== 'keys') return { ...effect, low: lift(effect.low, effect.high) }
  const high = Math.max(...effect.keys.map(({ level }) => level))
  const keys = effect.keys.map(
    (key): LightKey => ({
      ...key,
      level: lift(key.level, high),
      ease: key.ease === 'step' ? 'smooth' : key.ease,
    }),
  )
  return { ...effect, keys }
}

/** Green mixed into red until its share is well below the 0.8 of a saturated red. */
function lessRed(effect: LightEffect): LightEffect {
  const colour = unreddened(effect.colour)
  const keys = effect.keys.map((key) => ({ ...key, colour: unreddened(key.colour) }))
  return { ...effect, colour, keys }
}

const SAFE_RED_SHARE = 0.75

function unreddened([red, green, blue]: Emission): Emission {
  const needed = Math.ceil(red / SAFE_RED_SHARE - red - blue)
  return [red, Math.min(255, Math.max(green, needed)), blue]
}
