/** Row-major 3 × 3 rotation: board = matrix · prop axes. */
export type Matrix3 = [number, number, number, number, number, number, number, number, number]

export interface SensorRange {
  /** Nominal full scale, g or deg/s. */
  fullScale: number
  /**
   * Value of one count as the data sheet gives it for this range, 1e-9 g or 1e-9 deg/s. Never
   * derived from the full scale: in one vendor family the two differ by 14.7 %.
   */
  nanoPerLsb: number
}

export type AxisName = 'x' | 'y' | 'z'

/** What a calibration at the bench found of one board, as the firmware uses it: integers. */
export interface TargetCalibration {
  /** Counts at zero input in sample order, -32768 to 32767: `mvw_board.zero`. */
  zero: number[]
  /** Row-major 3 × 3 that corrects gain and cross-axis terms of the accelerometer; 16384 is 1. */
  correctionQ14: number[]
}

/** The hardware a library is made for. */
export interface Target {
  name: string
  /** Key of the preset the sensor fields came from, or 'custom'. */
  preset: string
  accel: SensorRange
  gyro: SensorRange
  /** Output data rate, Hz; 12.5 to 400. */
  rateHz: number
  /** Mounting of the sensor: board axes from the axes of the phone (held as the prop). */
  mounting: Matrix3
  /** Axis along the prop, in board axes. */
  longAxis: AxisName
  clockHz: number
  flashBytes: number
  ramBytes: number
  /** Flash that the model may take, bytes. */
  modelBudgetBytes: number
  /** Of the one board that was calibrated; absent without. */
  calibration?: TargetCalibration
}
