import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fail, ok, type Result } from '../../shared/model/result'
import type { Target } from '../../shared/model/target'
import { type CutSeries, dimensionsToCounts } from './cut-series'
import { parseMat5 } from './mat5'
import { datasetFolder } from './root'

/** Actions 1 to 21 wear the sensor on the wrist, 22 to 27 on the thigh. */
const LAST_WRIST_ACTION = 21
const FILE_NAME = /^a(\d+)_s(\d+)_t(\d+)_inertial\.mat$/

/**
 * The wrist actions of UTD-MHAD (Chen, Jafari, Kehtarnavaz, ICIP 2015): acceleration in g within
 * ±8, rotation in deg/s within ±1000, 50 Hz; the eight subjects are the testers.
 * @param ranges sensitivities that turn the values into counts
 */
export function loadUtdMhadWrist(ranges: Pick<Target, 'accel' | 'gyro'>): Result<CutSeries[]> {
  const folder = datasetFolder('UTD_MHAD_inertial')
  if (!folder.ok) return folder
  const inertial = join(folder.value, 'Inertial')
  const countsPerUnit: [number, number] = [
    1e9 / ranges.accel.nanoPerLsb,
    1e9 / ranges.gyro.nanoPerLsb,
  ]
  const series: CutSeries[] = []
  for (const file of readdirSync(inertial).sort()) {
    const match = FILE_NAME.exec(file)
    if (match === null || Number(match[1]) > LAST_WRIST_ACTION) continue
    const dimensions = readDimensions(join(inertial, file))
    if (!dimensions.ok) return dimensions
    series.push({
      label: `a${match[1]?.padStart(2, '0')}`,
      tester: `s${match[2]}`,
      counts: dimensionsToCounts(dimensions.value, countsPerUnit),
    })
  }
  return ok(series)
}

function readDimensions(path: string): Result<Float64Array[]> {
  const arrays = parseMat5(readFileSync(path), path)
  if (!arrays.ok) return arrays
  const array = arrays.value.find((each) => each.name === 'd_iner' && each.columns === 6)
  if (array === undefined) return fail('mat/variable', `${path} has no d_iner with six columns.`)
  const { rows, values } = array
  return ok(Array.from({ length: 6 }, (_, i) => values.subarray(i * rows, (i + 1) * rows)))
}
