import { type ReadonlySignal, signal } from '@preact/signals'
import type { AccelSign, Hand } from '../shared/model/library'

export type Theme = 'auto' | 'night' | 'day'

/** Small choices of this phone that are no part of any library. */
export interface Preferences {
  libraryId: string | null
  theme: Theme
  testerCode: string
  hand: Hand
  accelSign: AccelSign
  /** Beep at start, stop and cut, so that recording works without looking. */
  sound: boolean
  /** Hands-free takes that look good are kept without asking. */
  keepGood: boolean
}

const KEY = 'movewright.preferences'
const DEFAULTS: Preferences = {
  libraryId: null,
  theme: 'auto',
  testerCode: 'T01',
  hand: 'right',
  accelSign: 0,
  sound: true,
  keepGood: true,
}

const current = signal<Preferences>(read())
export const preferences: ReadonlySignal<Preferences> = current

export function prefer(change: Partial<Preferences>): void {
  current.value = { ...current.value, ...change }
  try {
    localStorage.setItem(KEY, JSON.stringify(current.value))
  } catch {
    // Storage forbidden or full: the choice holds for this visit.
  }
}

function read(): Preferences {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null')
    if (stored === null || typeof stored !== 'object') return DEFAULTS
    return restore(stored as Record<string, unknown>)
  } catch {
    return DEFAULTS
  }
}

/** Takes over what is sound and leaves the rest as by default. */
function restore(stored: Record<string, unknown>): Preferences {
  const oneOf = <T>(value: unknown, allowed: readonly T[], otherwise: T): T =>
    allowed.includes(value as T) ? (value as T) : otherwise
  const { libraryId, testerCode, sound, keepGood } = stored
  return {
    libraryId: typeof libraryId === 'string' ? libraryId : DEFAULTS.libraryId,
    theme: oneOf(stored.theme, ['auto', 'night', 'day'], DEFAULTS.theme),
    testerCode: typeof testerCode === 'string' && testerCode !== '' ? testerCode : 'T01',
    hand: oneOf(stored.hand, ['left', 'right', 'unknown'], DEFAULTS.hand),
    accelSign: oneOf(stored.accelSign, [1, -1, 0], DEFAULTS.accelSign),
    sound: typeof sound === 'boolean' ? sound : DEFAULTS.sound,
    keepGood: typeof keepGood === 'boolean' ? keepGood : DEFAULTS.keepGood,
  }
}
