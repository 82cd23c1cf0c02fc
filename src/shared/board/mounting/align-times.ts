import { fail, ok, type Result } from '../../model/result'
import { MOUNTING_TROUBLE } from '../../words/en/board-mounting-trouble'
import { bestLag } from './correlation'
import { evenly, type MotionSeries, rateMagnitude, smoothed } from './series'

export interface TimeAlignment {
  /** Time of an instant in the board's log, after the ratio, minus its time in the phone's, ms. */
  lagMs: number
  /** Phone time that passes in one unit of board time. */
  rateRatio: number
  /** Correlation of |angular rate| over the overlap, 0 to 1. */
  coefficient: number
}

/** Clocks may start this far apart, s. */
const MOST_LAG_S = 120
/** Below this the two saw different motions. */
const LEAST_COEFFICIENT = 0.6
/** Longer logs take too long to compare at every lag. */
const LONGEST_MS = 300_000
/** Ratios tried: an oscillator is off by some per cent, and an untimed log by as much. */
const RATIOS = Array.from({ length: 25 }, (_, i) => 1 + (i - 12) * 0.005)
const COARSE_HZ = 25

/**
 * Time offset and rate ratio of two logs of one motion. Codes: 'mounting/long', 'mounting/times' when nothing fits.
 */
export function alignTimes(
  phone: MotionSeries,
  board: MotionSeries,
  gridHz: number,
): Result<TimeAlignment> {
  const spanMs = Math.max(spanOf(phone), spanOf(board))
  if (spanMs > LONGEST_MS) {
    return fail('mounting/long', MOUNTING_TROUBLE.tooLong(Math.round(spanMs / 60_000)))
  }
  const coarse = bestOf(phone, board, COARSE_HZ, RATIOS, MOST_LAG_S)
  if (coarse === null || coarse.coefficient < LEAST_COEFFICIENT) {
    return fail('mounting/times', MOUNTING_TROUBLE.otherMotion)
  }
  const near = Array.from({ length: 21 }, (_, i) => coarse.rateRatio + (i - 10) * 0.0005)
  const fine = bestOf(phone, board, gridHz, near, 0.5, coarse.lagMs) ?? coarse
  return ok(fine)
}

function spanOf({ tMs }: MotionSeries): number {
  return (tMs[tMs.length - 1] ?? 0) - (tMs[0] ?? 0)
}

/** The ratio whose best lag agrees most; lags are searched around `aroundMs`. */
function bestOf(
  phone: MotionSeries,
  board: MotionSeries,
  rateHz: number,
  ratios: readonly number[],
  spanS: number,
  aroundMs = 0,
): TimeAlignment | null {
  const x = rateMagnitude(smoothed(evenly(phone, rateHz), 1))
  const around = Math.round((aroundMs * rateHz) / 1000)
  let best: TimeAlignment | null = null
  for (const rateRatio of ratios) {
    const tMs = Array.from(board.tMs, (t) => t * rateRatio)
    const y = rateMagnitude(smoothed(evenly({ tMs, values: board.values }, rateHz), 1))
    // Cut so that lag 0 is the one searched around.
    const [xs, ys] = around >= 0 ? [x, y.subarray(around)] : [x.subarray(-around), y]
    const least = Math.max(rateHz * 3, Math.min(x.length, y.length) / 3)
    const found = bestLag(xs, ys, Math.round(spanS * rateHz), Math.floor(least))
    if (found === null || (best !== null && found.coefficient <= best.coefficient)) continue
    best = {
      lagMs: ((found.lag + around) * 1000) / rateHz,
      rateRatio,
      coefficient: found.coefficient,
    }
  }
  return best
}
