import { STANDARD_GRAVITY_MPS2 } from '../../model/sample'
import { BOARD_CONFUSIONS } from '../../words/en/board-confusions'
import { FAMILY_TOLERANCE } from './limits'

/** A known confusion and the factor that readings are too large by. */
export interface Confusion {
  factor: number
  kind: 'unit' | 'scale'
  /** What happened, one sentence. */
  what: string
}

const DEGREES = 180 / Math.PI
/** Gyroscopes of the decimal family have 1.14688 times coarser counts than full scale / 32768. */
const DECIMAL_OVER_POWER = 1.14688
const POWERS = [-4, -3, -2, -1, 1, 2, 3, 4]

const ranges = POWERS.map(
  (power): Confusion => ({
    factor: 2 ** power,
    kind: 'scale',
    what: BOARD_CONFUSIONS.otherRange(power),
  }),
)

/** The log is in one unit and is taken for another. */
function unit(factor: number, is: string, takenFor: string): Confusion {
  return { factor, kind: 'unit', what: BOARD_CONFUSIONS.otherUnit(is, takenFor) }
}

export const ACCEL_CONFUSIONS: readonly Confusion[] = [
  ...ranges,
  unit(STANDARD_GRAVITY_MPS2, 'm/s²', 'g'),
  unit(1 / STANDARD_GRAVITY_MPS2, 'g', 'm/s²'),
  unit(1000, 'mg', 'g'),
  unit(1 / 1000, 'g', 'mg'),
  unit(1000 / STANDARD_GRAVITY_MPS2, 'mg', 'm/s²'),
]

export const GYRO_CONFUSIONS: readonly Confusion[] = [
  ...ranges,
  {
    factor: DECIMAL_OVER_POWER,
    kind: 'scale',
    what: BOARD_CONFUSIONS.partIsPowerOfTwo,
  },
  {
    factor: 1 / DECIMAL_OVER_POWER,
    kind: 'scale',
    what: BOARD_CONFUSIONS.partIsDecimal,
  },
  ...POWERS.flatMap((power): Confusion[] =>
    [DECIMAL_OVER_POWER, 1 / DECIMAL_OVER_POWER].map((family) => ({
      factor: 2 ** power * family,
      kind: 'scale',
      what: BOARD_CONFUSIONS.otherRangeAndFamily,
    })),
  ),
  unit(1 / DEGREES, 'rad/s', '°/s'),
  unit(DEGREES, '°/s', 'rad/s'),
  unit(1000, 'm°/s', '°/s'),
  unit(1 / 1000, '°/s', 'm°/s'),
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
