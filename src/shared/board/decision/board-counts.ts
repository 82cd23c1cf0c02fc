import { INT16_MAX, INT16_MIN, roundHalfAway } from '../../conditioning/counts'
import { fail, ok, type Result } from '../../model/result'
import { AXES } from '../../model/sample'
import type { Target } from '../../model/target'
import { BOARD_DECISION } from '../../words/en/board-decision-trouble'
import { dpsPerUnit, gPerUnit, intervalsMs, rateOfIntervals } from '../check/bench-log'
import { type BoardLog, rowCount } from '../log/board-log'

/** The core refuses a board whose rate is further off. */
const RATE_LIMIT = 0.05

/**
 * What the recogniser on the board was given: the words of the log, less the counts at zero that the
 * calibration found, saturated as `mvw_push` does. A log in units is turned into counts first.
 * Codes: 'decide/no-gyro', 'decide/words', 'decide/rate'.
 */
export function boardCounts(log: BoardLog, target: Target): Result<Int16Array> {
  if (log.gyroUnit === null) {
    return fail('decide/no-gyro', BOARD_DECISION.noGyro)
  }
  const rate = log.tMs === null ? null : rateOfIntervals(intervalsMs(log), log.clock)
  if (rate !== null && !(Math.abs(rate / target.rateHz - 1) <= RATE_LIMIT)) {
    return fail('decide/rate', BOARD_DECISION.rateOff(rate, target.rateHz))
  }
  const scale = [
    gPerUnit(log, target) / (target.accel.nanoPerLsb * 1e-9),
    dpsPerUnit(log, target) / (target.gyro.nanoPerLsb * 1e-9),
  ]
  const zero = target.calibration?.zero ?? []
  const counts = new Int16Array(log.values.length)
  for (let row = 0; row < rowCount(log); row++) {
    for (let axis = 0; axis < AXES; axis++) {
      const printed = log.values[AXES * row + axis]!
      const word = roundHalfAway(printed * scale[axis < 3 ? 0 : 1]!)
      if (log.accelUnit === 'count' && (word < INT16_MIN || word > INT16_MAX)) {
        return fail('decide/words', BOARD_DECISION.noWord(row + 1, printed))
      }
      counts[AXES * row + axis] = saturated(saturated(word) - (zero[axis] ?? 0))
    }
  }
  return ok(counts)
}

function saturated(value: number): number {
  return Math.max(INT16_MIN, Math.min(INT16_MAX, value))
}
