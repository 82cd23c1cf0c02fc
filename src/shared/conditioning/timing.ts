import type { Gap } from '../model/library'
import { mean, median, medianAbsoluteDeviation } from '../statistics/summary'

/**
 * A hole between two samples longer than this is a gap. A straight line across 100 ms is off by up
 * to 44 % of the amplitude of a movement at 3 Hz ((2π f h)² / 8), the tempo of a quick stroke: what
 * happened inside is not known any more. Shorter holes are bridged without a word.
 */
export const GAP_LIMIT_MS = 100

/** A sample later than this many median intervals counts as late. */
const LATE_FACTOR = 1.5

/** How evenly samples came. All NaN or 0 for fewer than two samples. */
export interface TimingFacts {
  /** Rate from the median interval, Hz; the mean would take every gap for a slower sensor. */
  rateHz: number
  medianMs: number
  meanMs: number
  /** Median absolute deviation of the intervals, ms. */
  spreadMs: number
  longestMs: number
  /** Intervals longer than 1.5 medians. */
  lateCount: number
}

function intervals(tMs: ArrayLike<number>): Float64Array {
  return Float64Array.from({ length: Math.max(0, tMs.length - 1) }, (_, i) => tMs[i + 1]! - tMs[i]!)
}

export function timingFacts(tMs: ArrayLike<number>): TimingFacts {
  const dt = intervals(tMs)
  const medianMs = median(dt)
  return {
    rateHz: medianMs > 0 ? 1000 / medianMs : 0,
    medianMs,
    meanMs: mean(dt),
    spreadMs: medianAbsoluteDeviation(dt),
    longestMs: dt.reduce((longest, d) => Math.max(longest, d), 0),
    lateCount: dt.filter((d) => d > LATE_FACTOR * medianMs).length,
  }
}

/** Gaps between samples, in order of time. */
export function findGaps(tMs: ArrayLike<number>): Gap[] {
  const gaps: Gap[] = []
  for (let i = 1; i < tMs.length; i++) {
    if (tMs[i]! - tMs[i - 1]! > GAP_LIMIT_MS) gaps.push({ startMs: tMs[i - 1]!, endMs: tMs[i]! })
  }
  return gaps
}

/**
 * Highest frequency that conditioned samples can show: half the slower of the two rates (Nyquist).
 * A phone at 60 Hz has nothing above 30 Hz to give, however fast the target samples.
 */
export function contentLimitHz(sourceRateHz: number, targetRateHz: number): number {
  return Math.min(sourceRateHz, targetRateHz) / 2
}
