import type { Step } from '../model/light'
import { fail, ok, type Result } from '../model/result'
import { LIGHT_PRESETS } from '../words/en/light-presets'
import { LIGHT_TROUBLE } from '../words/en/light-trouble'

export const MAX_STEPS = 64

export interface StepPreset {
  name: string
  steps: Step[]
}

const step = (value: number, ms: number): Step => ({ value, ms })

export const SOUND_PRESETS: readonly StepPreset[] = [
  { name: LIGHT_PRESETS.risingPair, steps: [step(523, 90), step(784, 140)] },
  { name: LIGHT_PRESETS.fallingPair, steps: [step(784, 90), step(523, 140)] },
  { name: LIGHT_PRESETS.bell, steps: [step(1047, 60), step(0, 20), step(1047, 220)] },
  { name: LIGHT_PRESETS.threeUp, steps: [step(392, 80), step(523, 80), step(659, 160)] },
]

export const VIBRATION_PRESETS: readonly StepPreset[] = [
  { name: LIGHT_PRESETS.short, steps: [step(200, 60)] },
  { name: LIGHT_PRESETS.double, steps: [step(200, 60), step(0, 80), step(200, 60)] },
  { name: LIGHT_PRESETS.swell, steps: [step(80, 120), step(160, 120), step(255, 160)] },
]

/** A pattern for `navigator.vibrate`, which knows on and off only: ms on, ms off, ms on ... */
export function vibrationPattern(steps: readonly Step[]): number[] {
  const pattern: number[] = []
  let isOn = false
  for (const { value, ms } of steps) {
    const shakes = value > 0
    if (pattern.length === 0 || shakes !== isOn) {
      // A pattern starts with an on time, be it of 0 ms.
      if (pattern.length === 0 && !shakes) pattern.push(0)
      pattern.push(ms)
      isOn = shakes
    } else {
      pattern[pattern.length - 1] = (pattern.at(-1) ?? 0) + ms
    }
  }
  return pattern
}

/** Steps with the time each starts, ms; pauses left out. */
export function notesOf(steps: readonly Step[]): { hz: number; atMs: number; ms: number }[] {
  let atMs = 0
  const notes = steps.map(({ value, ms }) => {
    const note = { hz: value, atMs, ms }
    atMs += ms
    return note
  })
  return notes.filter(({ hz }) => hz > 0)
}

/**
 * Reads steps typed as "523 90, 784 140": value and ms, a comma between steps.
 * @param most of the value: Hz, or 255 for a strength
 */
export function parseSteps(text: string, most: number): Result<Step[]> {
  if (text.trim() === '') return ok([])
  const parts = text.split(',').map((part) => part.trim())
  if (parts.length > MAX_STEPS) {
    return fail('steps/count', LIGHT_TROUBLE.tooManySteps(parts.length, MAX_STEPS))
  }
  const steps: Step[] = []
  for (const [index, part] of parts.entries()) {
    const [value, ms, ...more] = part.split(/\s+/).map(Number)
    const fine = isWhole(value, 0, most) && isWhole(ms, 1, 10_000) && more.length === 0
    if (!fine) {
      return fail('steps/step', LIGHT_TROUBLE.step(index + 1, part, most))
    }
    steps.push({ value: value as number, ms: ms as number })
  }
  return ok(steps)
}

export function stepsText(steps: readonly Step[]): string {
  return steps.map(({ value, ms }) => `${value} ${ms}`).join(', ')
}

function isWhole(value: number | undefined, least: number, most: number): boolean {
  return value !== undefined && Number.isInteger(value) && value >= least && value <= most
}
