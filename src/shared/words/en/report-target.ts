import { groupDigits, shortNumber } from './numbers'

/** What the report says of target, model and budget. */
export const REPORT_TARGET = {
  title: 'Target',
  name: 'Name',
  accel: 'Accelerometer',
  gyro: 'Gyroscope',
  rate: 'Output data rate',
  mounting: 'Mounting',
  longAxis: 'Long axis',
  clock: 'Clock',
  memory: 'Flash, RAM',
  modelFlash: 'Flash for the model',
  calibration: 'Calibration',
  notCalibrated: 'none: offsets and gains as the data sheet has them',
  hertz: (rateHz: number) => `${shortNumber(rateHz)} Hz`,
  megahertz: (clockHz: number) => `${shortNumber(clockHz / 1e6)} MHz`,
  /** @param offDeg how far the board is turned from the named mounting */
  mountedAs: (mounting: string, offDeg: number) =>
    offDeg > 0.05 ? `${mounting}, turned by ${offDeg.toFixed(1)}° from it` : mounting,
  boardAxis: (axis: string) => `board ${axis}`,
  calibratedAt: (zero: readonly number[]) =>
    `of one board: zero at ${zero.map(groupDigits).join(', ')} counts`,
}
