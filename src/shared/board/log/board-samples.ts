import { fail, ok, type Result } from '../../model/result'
import { AXES, type SampleBlock, STANDARD_GRAVITY_MPS2 } from '../../model/sample'
import type { Target } from '../../model/target'
import { BOARD_LOG } from '../../words/en/board-log-trouble'
import { dpsPerUnit, gPerUnit } from '../check/bench-log'
import { type BoardLog, rowCount } from './board-log'

/**
 * A board log as a recording: SI units, offsets of the calibration taken out, turned back through the
 * mounting into the axes of the phone, so that conditioning leads to what the board read. Without times
 * of its own it has the target's rate. Codes: 'board/short', 'board/time-order'.
 */
export function boardSamples(log: BoardLog, target: Target): Result<SampleBlock> {
  const count = rowCount(log)
  if (count < 2) return fail('board/short', BOARD_LOG.tooFewSamples)
  const tMs = log.tMs ?? Float64Array.from({ length: count }, (_, i) => (1000 * i) / target.rateHz)
  const back = tMs.findIndex((t, i) => i > 0 && t < tMs[i - 1]!)
  if (back >= 0) {
    return fail('board/time-order', BOARD_LOG.timeBackwards(back + 1))
  }
  const values = new Float32Array(AXES * count)
  const zero = target.calibration?.zero ?? []
  for (const first of [0, 3]) {
    const isAccel = first === 0
    // What was not measured has no offset: it is nought.
    if (!isAccel && log.gyroUnit === null) continue
    const perUnit = isAccel
      ? gPerUnit(log, target) * STANDARD_GRAVITY_MPS2
      : dpsPerUnit(log, target)
    const perCount = isAccel
      ? target.accel.nanoPerLsb * 1e-9 * STANDARD_GRAVITY_MPS2
      : target.gyro.nanoPerLsb * 1e-9
    for (let row = 0; row < count; row++) {
      const at = AXES * row + first
      const board = [0, 1, 2].map(
        (axis) => log.values[at + axis]! * perUnit - (zero[first + axis] ?? 0) * perCount,
      )
      for (let axis = 0; axis < 3; axis++) {
        // mountingᵀ · board
        values[at + axis] = [0, 1, 2].reduce(
          (sum, row) => sum + target.mounting[3 * row + axis]! * board[row]!,
          0,
        )
      }
    }
  }
  return ok({ tMs, values })
}
