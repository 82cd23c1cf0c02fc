import type { GestureProfile } from '../decide/gesture-decision'
import { apartBy } from '../decide/profiles'

export interface WherePoint {
  /** Index of the axis. */
  axis: number
  point: number
  /** Difference in standard deviations within the gestures. */
  apart: number
}

/** Where two gestures stand furthest apart. */
export function furthest(
  a: GestureProfile,
  b: GestureProfile,
  channels: number,
): WherePoint | null {
  const apart = apartBy(a, b)
  let best: WherePoint | null = null
  for (const [at, value] of apart.entries()) {
    if (best !== null && value <= best.apart) continue
    best = { axis: at % channels, point: Math.floor(at / channels), apart: value }
  }
  return best
}
