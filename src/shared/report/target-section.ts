import { rangeText } from '../present/target-choices'
import { nearestMounting } from '../target/mountings'
import { byteText } from '../words/en/numbers'
import { REPORT_TARGET } from '../words/en/report-target'
import { facts, type Html, name, section } from './html'
import type { ReportData } from './report-data'

/** The hardware that everything was computed for. */
export function targetSection({ library: { target } }: ReportData): Html {
  const { mounting, angleDeg } = nearestMounting(target.mounting)
  const { calibration } = target
  return section(
    REPORT_TARGET.title,
    facts([
      [REPORT_TARGET.name, name(target.name)],
      [REPORT_TARGET.accel, rangeText(target.accel, 'g')],
      [REPORT_TARGET.gyro, rangeText(target.gyro, 'deg/s')],
      [REPORT_TARGET.rate, REPORT_TARGET.hertz(target.rateHz)],
      [REPORT_TARGET.mounting, REPORT_TARGET.mountedAs(mounting.name, angleDeg)],
      [REPORT_TARGET.longAxis, REPORT_TARGET.boardAxis(target.longAxis)],
      [REPORT_TARGET.clock, REPORT_TARGET.megahertz(target.clockHz)],
      [REPORT_TARGET.memory, `${byteText(target.flashBytes)}, ${byteText(target.ramBytes)}`],
      [REPORT_TARGET.modelFlash, byteText(target.modelBudgetBytes)],
      [
        REPORT_TARGET.calibration,
        calibration === undefined
          ? REPORT_TARGET.notCalibrated
          : REPORT_TARGET.calibratedAt(calibration.zero),
      ],
    ]),
  )
}
