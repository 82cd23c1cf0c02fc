import type { Delimiter } from './csv'

export type TimeUnit = 's' | 'ms' | 'us' | 'ns'
/** 'count' is a raw reading, turned into SI by the sensitivity that goes with it. */
export type AccelUnit = 'mps2' | 'g' | 'mg' | 'count'
export type GyroUnit = 'dps' | 'radps' | 'mdps' | 'count'

/** Column numbers of x, y, z, counted from 0. */
export type Triple = [number, number, number]

/** How time is known: from a column, or from a rate with the rows in order. */
export type TimeMapping =
  | { kind: 'column'; column: number; unit: TimeUnit }
  | { kind: 'rate'; rateHz: number }

export interface AccelMapping {
  columns: Triple
  unit: AccelUnit
  /** 1e-9 g a count; used with unit 'count' only. */
  nanoPerLsb: number
}

export interface GyroMapping {
  columns: Triple
  unit: GyroUnit
  /** 1e-9 deg/s a count; used with unit 'count' only. */
  nanoPerLsb: number
}

/** Which column of a plain log means what. Columns not named here are left out. */
export interface CsvMapping {
  delimiter: Delimiter
  /** Numbers are written with a decimal comma; only when the delimiter is another character. */
  decimalComma: boolean
  /** Rows before the first sample. */
  headerRows: number
  time: TimeMapping
  accel: AccelMapping
  /** Null when the log has no gyroscope: its values become 0. */
  gyro: GyroMapping | null
}

export const MS_PER_UNIT: Record<TimeUnit, number> = { s: 1000, ms: 1, us: 0.001, ns: 1e-6 }
