import { AXES, STANDARD_GRAVITY_MPS2 } from '../../model/sample'
import type { Target } from '../../model/target'
import { mean, median } from '../../statistics/summary'
import { type BoardLog, rowCount, sliceLog } from '../log/board-log'
import type { BenchPart, StepId } from './steps'

/** g for one printed unit of the accelerometer. */
export function gPerUnit(log: BoardLog, target: Target): number {
  const { accelUnit } = log
  if (accelUnit === 'count') return target.accel.nanoPerLsb * 1e-9
  return { g: 1, mg: 1e-3, mps2: 1 / STANDARD_GRAVITY_MPS2 }[accelUnit]
}

/** deg/s for one printed unit of the gyroscope; 0 without one. */
export function dpsPerUnit(log: BoardLog, target: Target): number {
  const { gyroUnit } = log
  if (gyroUnit === null) return 0
  if (gyroUnit === 'count') return target.gyro.nanoPerLsb * 1e-9
  return { dps: 1, mdps: 1e-3, radps: 180 / Math.PI }[gyroUnit]
}

/** Rows of a step that are looked at, three minutes at 104 Hz: the check answers at once. */
export const MOST_CHECKED = 20_000

/** The logs of one visit to the bench with what all checks need of them. */
export class BenchLog {
  readonly parts: readonly BenchPart[]
  readonly target: Target
  readonly rows: number
  readonly hasGyro: boolean
  readonly isCounts: boolean
  /** Factors found by earlier checks: printed is this many times what it should be. */
  accelFactor = 1
  gyroFactor = 1
  /** Axes that earlier checks found frozen; nothing more is asked of their sensor. */
  frozen = new Set<number>()
  /** A small range cuts turns short, so that their angle says nothing on the scale. */
  gyroClipped = false
  /** Rows are copied or lost, so that without times no angle can be added up. */
  unevenRows = false
  /** Samples a second as measured, or the target's where logs have no times. */
  rateHz: number

  constructor(parts: readonly BenchPart[], target: Target) {
    this.parts = parts
      .filter(({ log }) => rowCount(log) > 0)
      .map(({ step, log }) => ({ step, log: sliceLog(log, 0, MOST_CHECKED) }))
    this.target = target
    this.rows = this.parts.reduce((sum, { log }) => sum + rowCount(log), 0)
    this.hasGyro = this.parts.some(({ log }) => log.gyroUnit !== null)
    this.isCounts = this.parts.every(({ log }) => log.accelUnit === 'count')
    this.rateHz = measuredRateHz(this.parts) ?? target.rateHz
  }

  part(step: StepId): BoardLog | null {
    return this.parts.find((part) => part.step === step)?.log ?? null
  }

  /** Logs in which the board was moved. */
  moved(): BoardLog[] {
    const isMoved = ({ step }: BenchPart) => /^(turn|shake|free)/.test(step)
    return this.parts.filter(isMoved).map(({ log }) => log)
  }

  /** Value in g or deg/s, corrected by the factors found so far. */
  value(log: BoardLog, row: number, axis: number): number {
    const scale =
      axis < 3
        ? gPerUnit(log, this.target) / this.accelFactor
        : dpsPerUnit(log, this.target) / this.gyroFactor
    return log.values[AXES * row + axis]! * scale
  }

  column(log: BoardLog, axis: number): Float64Array {
    return Float64Array.from({ length: rowCount(log) }, (_, row) => this.value(log, row, axis))
  }

  means(log: BoardLog): number[] {
    return Array.from({ length: AXES }, (_, axis) => mean(this.column(log, axis)))
  }

  sensorFrozen(sensor: 'accel' | 'gyro'): boolean {
    const first = sensor === 'accel' ? 0 : 3
    return [0, 1, 2].some((axis) => this.frozen.has(first + axis))
  }
}

/** Times between rows of one log, ms. */
export function intervalsMs(log: BoardLog): number[] {
  const { tMs } = log
  if (tMs === null) return []
  return Array.from({ length: Math.max(0, tMs.length - 1) }, (_, i) => tMs[i + 1]! - tMs[i]!)
}

/**
 * Rate from the intervals that are neither gaps nor doubled rows: their mean, as the median of times
 * printed in whole milliseconds is a whole millisecond too. Over arrival times only the whole counts.
 */
export function rateOfIntervals(intervals: readonly number[], clock: 'board' | 'arrival'): number {
  if (clock === 'arrival') return 1000 / mean(intervals)
  const usual = median(intervals.filter((dt) => dt > 0))
  const plain = intervals.filter((dt) => dt > 0.5 * usual && dt < 1.5 * usual)
  return plain.length === 0 ? Number.NaN : 1000 / mean(plain)
}

function measuredRateHz(parts: readonly BenchPart[]): number | null {
  const timed = parts.filter(({ log }) => log.tMs !== null && rowCount(log) > 10)
  if (timed.length === 0) return null
  const intervals = timed.flatMap(({ log }) => intervalsMs(log))
  const rate = rateOfIntervals(intervals, timed[0]!.log.clock)
  return rate > 0 && Number.isFinite(rate) ? rate : null
}
