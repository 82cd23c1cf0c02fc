import {
  chromaticity,
  isSaturatedRed,
  type LinearRgb,
  redAmount,
  relativeLuminance,
  uvDistance,
} from './luminance'

/** Flashes allowed in any one-second period, WCAG 2.2, success criterion 2.3.1. */
export const MOST_FLASHES = 3

const WINDOW_MS = 1000
/** Guards comparisons with limits against rounding. */
const TINY = 1e-9

/** Most flashes within one second and where that second starts. */
export interface FlashCount {
  /** A flash is a pair of opposing changes; half a pair counts half. */
  flashes: number
  atMs: number
}

/**
 * Times of changes of at least `change` in alternating direction whose darker end is below
 * `darkerBelow`. A slow rise counts once, when it has passed the size.
 */
export function changes(
  values: readonly number[],
  stepMs: number,
  change: number,
  darkerBelow: number,
): number[] {
  const times: number[] = []
  // The lowest and highest since the last change, of which one is the extreme to turn from.
  let lowest = values[0] ?? 0
  let highest = lowest
  let direction = 0
  values.forEach((value, index) => {
    const rises = direction <= 0 && value - lowest >= change - TINY && lowest < darkerBelow
    const falls = direction >= 0 && highest - value >= change - TINY && value < darkerBelow
    if (rises || falls) {
      times.push(index * stepMs)
      direction = rises ? 1 : -1
      lowest = value
      highest = value
    }
    lowest = Math.min(lowest, value)
    highest = Math.max(highest, value)
  })
  return times
}

/** The second that holds most of these times, each half a flash. */
export function mostInASecond(times: readonly number[]): FlashCount {
  let most: FlashCount = { flashes: 0, atMs: 0 }
  let first = 0
  times.forEach((time, index) => {
    while (time - (times[first] ?? time) >= WINDOW_MS) first++
    const flashes = (index - first + 1) / 2
    if (flashes > most.flashes) most = { flashes, atMs: times[first] ?? 0 }
  })
  return most
}

/** General flashes: changes of 10 % of full luminance, the darker below 0.80. */
export function generalFlashes(colours: readonly LinearRgb[], stepMs: number): FlashCount {
  return mostInASecond(changes(colours.map(relativeLuminance), stepMs, 0.1, 0.8))
}

/**
 * Red flashes by both working definitions, the larger count: WCAG 2.2 (a change of more than 0.2 in
 * u'v' into or out of a saturated red) and the older one (a change of more than 20 in
 * (R - G - B) x 320 that involves a saturated red).
 */
export function redFlashes(colours: readonly LinearRgb[], stepMs: number): FlashCount {
  const byColour = mostInASecond(redChanges(colours, stepMs))
  const reds = colours.map((colour) => (isSaturatedRed(colour) ? redAmount(colour) : 0))
  const byAmount = mostInASecond(changes(reds, stepMs, 20, Number.POSITIVE_INFINITY))
  return byAmount.flashes > byColour.flashes ? byAmount : byColour
}

/** Times at which the colour enters or leaves saturated red by more than 0.2 in u'v'. */
function redChanges(colours: readonly LinearRgb[], stepMs: number): number[] {
  const times: number[] = []
  const pureRed = chromaticity([1, 0, 0])
  let red = pureRed
  let inRed = isSaturatedRed(colours[0] ?? [0, 0, 0])
  // Out of red: the colour farthest from it, from which the way back is measured.
  let other = chromaticity(colours[0] ?? [0, 0, 0])
  colours.forEach((colour, index) => {
    const now = chromaticity(colour)
    const saturated = isSaturatedRed(colour)
    const turns = inRed ? uvDistance(now, red) > 0.2 : saturated && uvDistance(now, other) > 0.2
    if (turns) {
      times.push(index * stepMs)
      inRed = !inRed
      if (inRed) red = now
      else other = now
    } else if (inRed && saturated) {
      red = now
    } else if (!inRed && uvDistance(now, red) > uvDistance(other, red)) {
      other = now
    }
  })
  return times
}

/**
 * Flashes of a bare LED, for which area and the brighter-than-0.80 exemption of screens do not hold:
 * changes of the brightest emitter by 10 % of full, or by half of what this light reaches if that is
 * less, since a dim light that goes on and off flashes too. Movewright's own, stricter than WCAG.
 */
export function bareFlashes(colours: readonly LinearRgb[], stepMs: number): FlashCount {
  const brightest = colours.map((colour) => Math.max(...colour))
  const peak = brightest.reduce((most, value) => Math.max(most, value), 0)
  if (peak === 0) return { flashes: 0, atMs: 0 }
  return mostInASecond(
    changes(brightest, stepMs, Math.min(0.1, peak / 2), Number.POSITIVE_INFINITY),
  )
}
