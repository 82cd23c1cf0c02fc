import type { TradeOffPoint } from '../../evaluation/trade-off'
import { hoursMissingToClaim } from '../../evaluation/trade-off'
import type { BackgroundScore, TakeOutcome } from '../../model/evaluation'
import {
  countOf,
  durationText,
  percent,
  percentRange,
  plural,
  shortNumber,
  UNIT_SPACE,
} from './numbers'

const HOUR_MS = 3_600_000

/** A threshold factor as it stands beside the slider. */
export function factorText(factor: number): string {
  return `× ${factor.toFixed(2)}`
}

/** What was missed at a point: share, count and interval. */
export function missedNote({ missed }: TradeOffPoint): string {
  return `${countOf(missed)} takes, 95${UNIT_SPACE}% ${percentRange(missed.low, missed.high)}`
}

/** What was activated at a point: count, hours and interval. */
export function activationNote({ activations, hours, low, high }: BackgroundScore): string {
  return `${plural('activation', activations)} in ${hoursText(hours)}, 95${UNIT_SPACE}% ${shortNumber(low)} to ${shortNumber(high)}`
}

/** The point in words, for those who cannot see the curve. */
export function spokenPoint(point: TradeOffPoint): string {
  const missed = `${percent(point.missed.value)} missed, ${missedNote(point)}`
  if (point.background === null) return `${missed}; false activations not known`
  const { perHour } = point.background
  return `${missed}; ${shortNumber(perHour)} false activations an hour, ${activationNote(point.background)}`
}

/** How much background is missing before fewer than `perHour` may be claimed. */
export function claimSentence(background: BackgroundScore, perHour: number): string {
  const missing = hoursMissingToClaim(background, perHour)
  const claim = `fewer than ${shortNumber(perHour)} an hour`
  if (missing === 0) {
    return `The ${hoursText(background.hours)} recorded are enough to claim ${claim} (one-sided 95${UNIT_SPACE}%, exact Poisson).`
  }
  return `To claim ${claim} (one-sided 95${UNIT_SPACE}%, exact Poisson), ${hoursText(missing)} more background with no ${background.activations === 0 ? '' : 'further '}activation are needed.`
}

/** Hours from one on, minutes or seconds below. */
export function hoursText(hours: number): string {
  return hours < 1 ? durationText(hours * HOUR_MS) : `${shortNumber(hours)} h`
}

export const CUT_WORDS: Record<TakeOutcome['cut'], string> = {
  ok: 'as one',
  split: 'split',
  missed: 'missed',
  long: 'too long',
  short: 'too short',
}
