import type { AccelUnit, GyroUnit } from '../../format/csv-mapping'
import { AXES } from '../../model/sample'

/** A line that could not be read, for people. */
export interface LineProblem {
  /** Counted from 1, as an editor does. */
  line: number
  /** What is wrong with it, one clause. */
  what: string
}

/** Whose clock the times are of: the board's own, or of the arrival of a line. */
export type LogClock = 'board' | 'arrival'

/**
 * Samples as the board printed them: nothing is scaled, sorted or dropped, so that a wrong scale or
 * a time that runs backwards can be found.
 */
export interface BoardLog {
  /** n × 6 row-major in sample order; 0 for sensors the log does not have. */
  values: Float64Array
  accelUnit: AccelUnit
  /** Null when the log has no gyroscope. */
  gyroUnit: GyroUnit | null
  /** Time of each row, ms from the first; null when the log has none. */
  tMs: Float64Array | null
  clock: LogClock
  /** The first lines that could not be read, and how many there were. */
  problems: LineProblem[]
  problemCount: number
}

export function rowCount(log: BoardLog): number {
  return log.values.length / AXES
}

export interface LogShape {
  accelUnit: AccelUnit
  gyroUnit: GyroUnit | null
  hasTime: boolean
  clock: LogClock
}

const KEPT_PROBLEMS = 20

/** Collects rows one by one; buffers grow by doubling. */
export class LogBuilder {
  readonly #shape: LogShape
  #values = new Float64Array(AXES * 256)
  #tMs = new Float64Array(256)
  #firstMs = 0
  #problems: LineProblem[] = []
  #problemCount = 0
  count = 0

  constructor(shape: LogShape) {
    this.#shape = shape
  }

  /** @param tMs on any clock; taken from the first row on. Ignored where the log has no time. */
  add(tMs: number, values: ArrayLike<number>): void {
    if (this.count === this.#tMs.length) this.#grow()
    if (this.count === 0) this.#firstMs = tMs
    this.#tMs[this.count] = tMs - this.#firstMs
    for (let axis = 0; axis < AXES; axis++) {
      this.#values[AXES * this.count + axis] = values[axis] ?? 0
    }
    this.count++
  }

  problem(problem: LineProblem): void {
    this.#problemCount++
    if (this.#problems.length < KEPT_PROBLEMS) this.#problems.push(problem)
  }

  /** What was read so far, as a log of its own. */
  build(): BoardLog {
    const { accelUnit, gyroUnit, hasTime, clock } = this.#shape
    return {
      values: this.#values.slice(0, AXES * this.count),
      accelUnit,
      gyroUnit,
      tMs: hasTime ? this.#tMs.slice(0, this.count) : null,
      clock,
      problems: [...this.#problems],
      problemCount: this.#problemCount,
    }
  }

  #grow(): void {
    const values = new Float64Array(2 * this.#values.length)
    values.set(this.#values)
    this.#values = values
    const tMs = new Float64Array(2 * this.#tMs.length)
    tMs.set(this.#tMs)
    this.#tMs = tMs
  }
}

/** Part of a log, [from, to) rows; its times start at 0 again. */
export function sliceLog(log: BoardLog, from: number, to: number): BoardLog {
  if (from === 0 && to >= rowCount(log)) return log
  const tMs = log.tMs?.slice(from, to) ?? null
  const start = tMs?.[0] ?? 0
  return {
    ...log,
    values: log.values.slice(AXES * from, AXES * to),
    tMs: tMs?.map((t) => t - start) ?? null,
  }
}
