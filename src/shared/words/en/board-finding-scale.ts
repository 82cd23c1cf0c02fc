import type { FindingWords } from '../../board/check/finding'

/** A sensor whose readings are too large by a factor. */
interface WrongScale {
  factor: number
  /** Whether the unit of the log explains it. */
  isUnit: boolean
  /** The known confusion that explains it, a sentence; null when none is near. */
  confusion: string | null
}

interface FlatTop {
  axis: string
  value: number
  unit: string
  rows: number
  /** Of the target, where the flat top lies well below it; else null. */
  largerRange: number | null
}

/** What the board check says of scales, zeros and ranges. */
export const BOARD_SCALE = {
  accel: ({
    factor,
    isUnit,
    confusion,
    from,
  }: WrongScale & { from: 'faces' | 'one-pose' }): FindingWords => ({
    title: isUnit ? 'The accelerometer is in another unit' : 'The accelerometer has a wrong scale',
    seen: `Gravity reads ${factor.toPrecision(3)} g instead of 1 g (${from === 'faces' ? 'mean over six faces' : 'at rest, one pose'}).`,
    causes: [
      ...(confusion === null ? [] : [confusion]),
      ...(isUnit
        ? []
        : ['The range bits of the control register were not written, or by a reset lost.']),
      ...(isUnit ? ['The driver converts units that the firmware converts again.'] : []),
      'The words are left-aligned with fewer bits (12 or 14) and are not shifted.',
    ],
    next: [
      'Read back the range bits and compare them with the target’s range on Prop.',
      'Compare counts for 1 g with the data sheet’s sensitivity for that range, not with range / 32768.',
    ],
  }),
  gyro: ({
    factor,
    isUnit,
    confusion,
    isUntimed,
  }: WrongScale & { isUntimed: boolean }): FindingWords => ({
    title: isUnit ? 'The gyroscope is in another unit' : 'The gyroscope has a wrong scale',
    seen: `While gravity turned by 360°, the gyroscope’s readings add up to ${(360 * factor).toPrecision(4)}°: a factor of ${factor.toPrecision(4)}.`,
    causes: [
      ...(confusion === null ? [] : [confusion]),
      ...(isUntimed
        ? ['The log has no times: if the true rate differs from the target’s, so does this factor.']
        : []),
      'The range bits of the control register were not written, or by a reset lost.',
    ],
    next: [
      'Take the sensitivity of the range from the data sheet; never compute it from the range.',
      'Read back the range bits of the gyroscope.',
      'Turn the board by exactly one turn against a straight edge and add up the readings: 360°.',
    ],
  }),
  accelOffset: (axis: string, g: number): FindingWords => ({
    title: 'The accelerometer is off zero',
    seen: `${axis} reads ${g.toFixed(3)} g halfway between its two faces; up to ±0.08 g is printed for cheap parts.`,
    causes: [
      'The package is under stress: soldered by hand, bent board, a screw beside it, glue on it.',
      'The part was dropped or went through ultrasonic cleaning.',
      'An offset register holds a value from another board.',
    ],
    next: [
      'Loosen the screws and log again: does it change?',
      'Read the offset registers; they are zero after reset.',
      'Calibrate by six faces below: an offset is subtracted on the board.',
    ],
  }),
  gyroOffset: (axis: string, dps: number): FindingWords => ({
    title: 'The gyroscope is off zero',
    seen: `${axis} reads ${dps.toFixed(1)} °/s at rest; up to ±20 °/s is printed for cheap parts.`,
    causes: [
      'The board turned while it should lie still.',
      'The part is hot or under stress.',
      'An offset register holds a value from another board, or a high-pass filter has not settled.',
    ],
    next: [
      'Log again ten seconds after power-up, on a table that nobody touches.',
      'Read the offset registers; they are zero after reset.',
      'Calibrate below: the bias is subtracted on the board.',
    ],
  }),
  clipped: ({ axis, value, unit, rows, largerRange }: FlatTop): FindingWords => ({
    title: 'The range is too small for a firm shake',
    seen: `${axis} stays at ${value.toPrecision(3)} ${unit} over ${rows} rows: a flat top${largerRange === null ? '' : `, though the target’s range is ±${largerRange} ${unit}`}.`,
    causes: [
      ...(largerRange === null
        ? []
        : ['A smaller range is set in the sensor than the target says.']),
      'The range is smaller than the movement.',
      'The driver cuts values, such as to 12 bits.',
    ],
    next: [
      'Set the next larger range in the firmware and on Prop, and train again.',
      'Shake as hard as the prop will be moved and log again.',
    ],
  }),
}
