import type { AccelUnit, GyroUnit, TimeUnit } from './csv-mapping'

/** What one header cell seems to mean. */
export type HeaderMeaning =
  | { kind: 'time'; unit: TimeUnit | null }
  | { kind: 'accel'; axis: 0 | 1 | 2; unit: AccelUnit | null }
  | { kind: 'gyro'; axis: 0 | 1 | 2; unit: GyroUnit | null }

const TIME_WORDS = new Set([
  't',
  'time',
  'timestamp',
  'ts',
  'millis',
  'micros',
  'nanos',
  'seconds',
  'ms',
  'us',
  'ns',
  's',
  'elapsed',
])
const ACCEL_WORDS = new Set(['a', 'acc', 'accel', 'accelerometer', 'acceleration'])
const GYRO_WORDS = new Set([
  'g',
  'gyr',
  'gyro',
  'gyroscope',
  'w',
  'omega',
  'rate',
  'rotation',
  'angular',
])

const TIME_UNITS: Record<string, TimeUnit> = {
  s: 's',
  sec: 's',
  seconds: 's',
  ms: 'ms',
  msec: 'ms',
  millis: 'ms',
  us: 'us',
  usec: 'us',
  micros: 'us',
  ns: 'ns',
  nsec: 'ns',
  nanos: 'ns',
  nanoseconds: 'ns',
}
const ACCEL_UNITS: Record<string, AccelUnit> = {
  mps2: 'mps2',
  'm/s2': 'mps2',
  'm/s^2': 'mps2',
  ms2: 'mps2',
  g: 'g',
  mg: 'mg',
  lsb: 'count',
  raw: 'count',
  count: 'count',
  counts: 'count',
}
const GYRO_UNITS: Record<string, GyroUnit> = {
  dps: 'dps',
  'deg/s': 'dps',
  degps: 'dps',
  'rad/s': 'radps',
  radps: 'radps',
  rads: 'radps',
  mdps: 'mdps',
  lsb: 'count',
  raw: 'count',
  count: 'count',
  counts: 'count',
}

/**
 * What a header cell says by its words and unit, such as `ax_mps2`, `Gyro X (deg/s)`, `t [ms]` or
 * `acc_z`; null when it says nothing known.
 */
export function readHeaderCell(cell: string): HeaderMeaning | null {
  const words = wordsOf(cell)
  const axis = axisOf(words)
  if (axis === null) return timeOf(words)
  const { sensor, index } = axis
  const units = words.slice(1)
  if (sensor === 'accel') return { kind: 'accel', axis: index, unit: find(units, ACCEL_UNITS) }
  return { kind: 'gyro', axis: index, unit: find(units, GYRO_UNITS) }
}

/** Lower case; 'µ' and '²' as ASCII; 'accX' parted; split at anything but letters, digits, / and ^. */
function wordsOf(cell: string): string[] {
  return cell
    .replace(/([a-z])([XYZ])(?![a-z])/g, '$1 $2')
    .toLowerCase()
    .replaceAll(/[µμ]/g, 'u')
    .replaceAll('²', '2')
    .replaceAll('°', 'deg')
    .split(/[^a-z0-9/^]+/)
    .filter((word) => word !== '')
}

function axisOf(words: string[]): { sensor: 'accel' | 'gyro'; index: 0 | 1 | 2 } | null {
  const letter = words.map((word) => /^(.*?)([xyz])$/.exec(word)).find((match) => match !== null)
  if (!letter) return null
  const [, stem = '', axis = ''] = letter
  const names = [stem, ...words]
  const index = 'xyz'.indexOf(axis) as 0 | 1 | 2
  if (names.some((name) => ACCEL_WORDS.has(name))) return { sensor: 'accel', index }
  // A lone 'g' beside an axis may be the unit: only as part of the axis' own word is it a gyroscope.
  const gyro = stem === 'g' || names.some((name) => name !== 'g' && GYRO_WORDS.has(name))
  return gyro ? { sensor: 'gyro', index } : null
}

function timeOf(words: string[]): HeaderMeaning | null {
  if (!words.some((word) => TIME_WORDS.has(word))) return null
  return { kind: 'time', unit: find(words, TIME_UNITS) }
}

/** The last word that is a unit, since units stand behind names. */
function find<Unit>(words: string[], units: Record<string, Unit>): Unit | null {
  const known = words.filter((word) => Object.hasOwn(units, word))
  return units[known.at(-1) ?? ''] ?? null
}
