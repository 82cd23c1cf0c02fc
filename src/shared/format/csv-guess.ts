import { STANDARD_GRAVITY_MPS2 } from '../model/sample'
import type { Target } from '../model/target'
import { type HeaderMeaning, readHeaderCell } from './csv-header'
import type {
  AccelMapping,
  AccelUnit,
  GyroMapping,
  GyroUnit,
  TimeMapping,
  TimeUnit,
  Triple,
} from './csv-mapping'

/** Rate offered when nothing is known; a common output data rate of phones' browsers. */
const USUAL_RATE_HZ = 60

/** Columns of a log as numbers, the first few hundred rows; NaN where there is none. */
export interface NumberColumns {
  header: string[] | null
  columns: number[][]
}

export interface Guess {
  time: TimeMapping
  accel: AccelMapping | null
  gyro: GyroMapping | null
}

/** What the columns most likely mean: by header first, by their numbers where it is silent. */
export function guessColumns(log: NumberColumns, target: Target | null): Guess {
  const meanings = (log.header ?? []).map(readHeaderCell)
  const named = meanings.some((meaning) => meaning !== null && meaning.kind !== 'time')
  const timeColumn = guessTimeColumn(log, meanings)
  const triples = named
    ? { accel: namedTriple(meanings, 'accel'), gyro: namedTriple(meanings, 'gyro') }
    : triplesInOrder(log.columns, timeColumn)
  const accelUnit = unitOf(meanings, 'accel') ?? guessAccelUnit(log.columns, triples.accel)
  const gyroUnit =
    unitOf(meanings, 'gyro') ?? (accelUnit === 'count' ? 'count' : ('dps' satisfies GyroUnit))
  return {
    time: guessTime(log, meanings, timeColumn, target),
    accel: triples.accel && {
      columns: triples.accel,
      unit: accelUnit,
      nanoPerLsb: target?.accel.nanoPerLsb ?? 0,
    },
    gyro: triples.gyro && {
      columns: triples.gyro,
      unit: gyroUnit,
      nanoPerLsb: target?.gyro.nanoPerLsb ?? 0,
    },
  }
}

function guessTimeColumn(log: NumberColumns, meanings: (HeaderMeaning | null)[]): number | null {
  const named = meanings.findIndex((meaning) => meaning?.kind === 'time')
  if (named >= 0) return named
  const rising = log.columns.findIndex(
    (column) => column.length > 2 && column.every((t, n) => n === 0 || t > (column[n - 1] ?? t)),
  )
  return rising >= 0 ? rising : null
}

function guessTime(
  log: NumberColumns,
  meanings: (HeaderMeaning | null)[],
  column: number | null,
  target: Target | null,
): TimeMapping {
  if (column === null) return { kind: 'rate', rateHz: target?.rateHz ?? USUAL_RATE_HZ }
  const meaning = meanings[column]
  const named = meaning?.kind === 'time' ? meaning.unit : null
  return { kind: 'column', column, unit: named ?? guessTimeUnit(log.columns[column] ?? []) }
}

/** From the usual step: sensors give 10 to 1,000 readings a second. */
function guessTimeUnit(times: number[]): TimeUnit {
  const step = median(times.slice(1).map((t, n) => t - (times[n] ?? t)))
  if (step < 0.5) return 's'
  if (step < 500) return 'ms'
  return step < 500_000 ? 'us' : 'ns'
}

function namedTriple(meanings: (HeaderMeaning | null)[], kind: 'accel' | 'gyro'): Triple | null {
  const at = (axis: number) =>
    meanings.findIndex((meaning) => meaning?.kind === kind && meaning.axis === axis)
  const triple: Triple = [at(0), at(1), at(2)]
  return triple.includes(-1) ? null : triple
}

function unitOf(meanings: (HeaderMeaning | null)[], kind: 'accel'): AccelUnit | null
function unitOf(meanings: (HeaderMeaning | null)[], kind: 'gyro'): GyroUnit | null
function unitOf(meanings: (HeaderMeaning | null)[], kind: 'accel' | 'gyro') {
  const meaning = meanings.find((one) => one?.kind === kind && one.unit !== null)
  return meaning?.kind === kind ? meaning.unit : null
}

/** Accelerometer then gyroscope, x y z each, from the number columns that are not time. */
function triplesInOrder(
  columns: number[][],
  timeColumn: number | null,
): { accel: Triple | null; gyro: Triple | null } {
  const hasNumber = (column: number[]) => Number.isFinite(column[0] ?? Number.NaN)
  const free = [...columns.keys()].filter((c) => c !== timeColumn && hasNumber(columns[c] ?? []))
  const triple = (from: number): Triple | null => {
    const [x, y, z] = free.slice(from, from + 3)
    return x === undefined || y === undefined || z === undefined ? null : [x, y, z]
  }
  return { accel: triple(0), gyro: triple(3) }
}

/** From the usual length of the acceleration, which is near 1 g in most rows. */
function guessAccelUnit(columns: number[][], triple: Triple | null): AccelUnit {
  if (triple === null) return 'mps2'
  const [x, y, z] = triple.map((column) => columns[column] ?? [])
  const lengths = (x ?? []).map((value, n) => Math.hypot(value, y?.[n] ?? 0, z?.[n] ?? 0))
  const length = median(lengths.filter(Number.isFinite))
  if (length < STANDARD_GRAVITY_MPS2 / 3) return 'g'
  if (length < STANDARD_GRAVITY_MPS2 * 5) return 'mps2'
  return length > 900 && length < 1100 ? 'mg' : 'count'
}

function median(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN
}
