import { STANDARD_GRAVITY_MPS2 } from '../../model/sample'
import { FAMILY_TOLERANCE } from './limits'

/** A known confusion and the factor that readings are too large by. */
export interface Confusion {
  factor: number
  kind: 'unit' | 'scale'
  /** What happened, one clause. */
  what: string
}

const DEGREES = 180 / Math.PI
/** Gyroscopes of the decimal family have 1.14688 times coarser counts than full scale / 32768. */
const DECIMAL_OVER_POWER = 1.14688
const POWERS = [-4, -3, -2, -1, 1, 2, 3, 4]

function powers(what: (times: string) => string): Confusion[] {
  return POWERS.map((power) => {
    const times = power > 0 ? `${2 ** power} times finer` : `${2 ** -power} times coarser`
    return { factor: 2 ** power, kind: 'scale', what: what(times) }
  })
}

const ranges = powers(
  (times) => `the sensor is set to a range with ${times} counts than the target says`,
)

export const ACCEL_CONFUSIONS: readonly Confusion[] = [
  ...ranges,
  { factor: STANDARD_GRAVITY_MPS2, kind: 'unit', what: 'the log is in m/s² and is taken for g' },
  {
    factor: 1 / STANDARD_GRAVITY_MPS2,
    kind: 'unit',
    what: 'the log is in g and is taken for m/s²',
  },
  { factor: 1000, kind: 'unit', what: 'the log is in mg and is taken for g' },
  { factor: 1 / 1000, kind: 'unit', what: 'the log is in g and is taken for mg' },
  {
    factor: 1000 / STANDARD_GRAVITY_MPS2,
    kind: 'unit',
    what: 'the log is in mg and is taken for m/s²',
  },
]

export const GYRO_CONFUSIONS: readonly Confusion[] = [
  ...ranges,
  {
    factor: DECIMAL_OVER_POWER,
    kind: 'scale',
    what: 'the target takes decimal sensitivities (8.75 mdeg/s a count at ±250) and the part has full scale at 32768 (7.63)',
  },
  {
    factor: 1 / DECIMAL_OVER_POWER,
    kind: 'scale',
    what: 'the target takes full scale at 32768 (7.63 mdeg/s a count at ±250) and the part has decimal sensitivities (8.75)',
  },
  ...POWERS.flatMap((power): Confusion[] =>
    [DECIMAL_OVER_POWER, 1 / DECIMAL_OVER_POWER].map((family) => ({
      factor: 2 ** power * family,
      kind: 'scale',
      what: 'another range is set, and the part is of the other family of sensitivities',
    })),
  ),
  { factor: 1 / DEGREES, kind: 'unit', what: 'the log is in rad/s and is taken for °/s' },
  { factor: DEGREES, kind: 'unit', what: 'the log is in °/s and is taken for rad/s' },
  { factor: 1000, kind: 'unit', what: 'the log is in m°/s and is taken for °/s' },
  { factor: 1 / 1000, kind: 'unit', what: 'the log is in °/s and is taken for m°/s' },
]

/**
 * The nearest known confusion on a logarithmic scale, null when none is near. Units are considered only
 * for logs that are not in counts: counts have none.
 */
export function nearestConfusion(
  factor: number,
  list: readonly Confusion[],
  isCounts: boolean,
): Confusion | null {
  const distance = (one: Confusion) => Math.abs(Math.log(factor / one.factor))
  const candidates = list.filter(({ kind }) => kind === 'scale' || !isCounts)
  const best = candidates.reduce((a, b) => (distance(b) < distance(a) ? b : a))
  return distance(best) < Math.log(FAMILY_TOLERANCE) ? best : null
}
