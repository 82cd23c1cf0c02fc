import { rangeText } from '../present/target-choices'
import { nearestMounting } from '../target/mountings'
import { byteText, groupDigits, shortNumber } from '../words/en/numbers'
import { facts, type Html, name, section } from './html'
import type { ReportData } from './report-data'

/** The hardware that everything was computed for. */
export function targetSection({ library: { target } }: ReportData): Html {
  const { mounting, angleDeg } = nearestMounting(target.mounting)
  const skew = angleDeg > 0.05 ? `, turned by ${angleDeg.toFixed(1)}° from it` : ''
  const { calibration } = target
  return section(
    'Target',
    facts([
      ['Name', name(target.name)],
      ['Accelerometer', rangeText(target.accel, 'g')],
      ['Gyroscope', rangeText(target.gyro, 'deg/s')],
      ['Output data rate', `${shortNumber(target.rateHz)} Hz`],
      ['Mounting', `${mounting.name}${skew}`],
      ['Long axis', `board ${target.longAxis}`],
      ['Clock', `${shortNumber(target.clockHz / 1e6)} MHz`],
      ['Flash, RAM', `${byteText(target.flashBytes)}, ${byteText(target.ramBytes)}`],
      ['Flash for the model', byteText(target.modelBudgetBytes)],
      [
        'Calibration',
        calibration === undefined
          ? 'none: offsets and gains as the data sheet has them'
          : `of one board: zero at ${calibration.zero.map(groupDigits).join(', ')} counts`,
      ],
    ]),
  )
}
