import type { CsvMapping } from '../../shared/format/csv-mapping'
import { CSV_IMPORT } from '../../shared/words/en/csv-import'

const AXES = ['x', 'y', 'z'] as const

/** What a column is taken for, null when it is left out. */
export function columnUse({ time, accel, gyro }: CsvMapping, column: number): string | null {
  if (time.kind === 'column' && time.column === column) return CSV_IMPORT.timeColumn
  const accelAxis = AXES[accel.columns.indexOf(column)]
  if (accelAxis !== undefined) return CSV_IMPORT.accelAxis(accelAxis)
  const gyroAxis = gyro === null ? undefined : AXES[gyro.columns.indexOf(column)]
  return gyroAxis === undefined ? null : CSV_IMPORT.gyroAxis(gyroAxis)
}
