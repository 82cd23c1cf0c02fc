import { Resampler } from '../../conditioning/resampler'
import type { CoreEvent } from '../../core/core'
import type { AccelSign } from '../../model/library'
import type { Replay } from '../../model/replay'
import { ok, type Result } from '../../model/result'
import { AXES, type SampleBlock } from '../../model/sample'
import type { Target } from '../../model/target'
import { dpsPerUnit, gPerUnit } from '../check/bench-log'
import { type BoardLog, rowCount } from '../log/board-log'
import { alignTimes, type TimeAlignment } from '../mounting/align-times'
import type { MotionSeries } from '../mounting/series'
import { compareEvents, type EventComparison, type TimedEvent } from './compare-events'
import type { BoardDecision } from './decide'

const GRID_HZ = 100

/** A recording of the phone as a series, g and deg/s, W3C sign. */
export function seriesOfPhone({ tMs, values }: SampleBlock, sign: AccelSign): MotionSeries {
  const factor = (sign === -1 ? -1 : 1) / 9.80665
  return { tMs, values: values.map((value, i) => (i % AXES < 3 ? value * factor : value)) }
}

/** A board log as a series; without times of its own at the target's rate. */
export function seriesOfBoard(log: BoardLog, target: Target): MotionSeries {
  const [g, dps] = [gPerUnit(log, target), dpsPerUnit(log, target)]
  const tMs =
    log.tMs ?? Float64Array.from({ length: rowCount(log) }, (_, i) => (1000 * i) / target.rateHz)
  return { tMs, values: log.values.map((value, i) => value * (i % AXES < 3 ? g : dps)) }
}

export interface SameDecision extends EventComparison {
  times: TimeAlignment
}

/**
 * Phone and board over one motion: decisions of the same model side by side, on the phone's clock.
 * Codes: those of alignTimes.
 */
export function compareDecisions(
  phone: { series: MotionSeries; replay: Replay },
  board: { series: MotionSeries; decision: BoardDecision },
): Result<SameDecision> {
  const aligned = alignTimes(phone.series, board.series, GRID_HZ)
  if (!aligned.ok) return aligned
  const { lagMs, rateRatio } = aligned.value
  const timed = (events: readonly CoreEvent[], timeOf: (index: number) => number): TimedEvent[] =>
    events.map((event) => ({ event, atMs: (timeOf(event.start) + timeOf(event.end - 1)) / 2 }))
  const { tMs } = board.series
  const start = tMs[0] ?? 0
  const boardTime = (index: number) =>
    ((tMs[Math.min(index, tMs.length - 1)] ?? 0) - start) * rateRatio - lagMs
  const comparison = compareEvents(
    timed(phone.replay.events, conditionedTimes(phone.series, phone.replay.rateHz)),
    timed(board.decision.events, boardTime),
  )
  return ok({ ...comparison, times: aligned.value })
}

/** When conditioned samples are, ms from the first reading on: long pauses are not in their count. */
function conditionedTimes({ tMs }: MotionSeries, rateHz: number): (index: number) => number {
  const even = new Resampler(rateHz, () => undefined)
  const still = new Float64Array(AXES)
  for (let i = 0; i < tMs.length; i++) even.push(tMs[i]!, still)
  return (index) => even.timeOfMs(index) - (tMs[0] ?? 0)
}
