import { shortNumber } from './numbers'

/** What the logs of a board are good for: calibration, mounting, the same decision. */
export const BOARD_NEXT = {
  calibration: {
    title: 'Calibration',
    takeOver: 'Take over into the target',
    about:
      'Counts at zero are subtracted on this one board, so they go into its exported example. The phone and the model do not change.',
    simulated:
      'These logs are of a simulated board: its offsets are nobody’s and cannot be taken over.',
    inTarget: (zero: readonly number[]) => `In the target now: zero at ${zero.join(', ')} counts.`,
    takeAway: 'Take it away',
    madeOf: 'A calibration is made of the rest and the six faces of the board check.',
    logThem: 'Log them',
    square: 'The faces stood against a square block, so cross-axis terms are the sensor’s own',
    accelerometer: (axis: string) => `Accelerometer ${axis}`,
    gyroscope: (axis: string) => `Gyroscope ${axis}`,
    countsAtZero: 'counts at zero',
    offsetAndGain: (offsetMg: number, gain: number) =>
      `${shortNumber(offsetMg)} mg, gain ${gain.toFixed(3)}`,
    quality: (crossAxisPercent: number, residualMg: number) =>
      `Largest cross-axis term ${crossAxisPercent.toFixed(1)} %; a face one degree off looks like 1.7 %. The fit leaves ${shortNumber(residualMg)} mg rms. Measured once, at one temperature.`,
  },
  mounting: {
    title: 'Mounting from data',
    find: 'Find the mounting',
    about:
      'Strap the phone to the prop as it is held when recording. Record background on the phone and log the board at the same time: rest, turn slowly about every axis, rest in between in different poses. Half a minute is enough; the clocks need not agree.',
    result: 'Mounting',
    near: (angleDeg: number, mounting: string) =>
      `${angleDeg.toFixed(1)}° from “${mounting}”: most likely it was meant to be that.`,
    ofItsOwn: (angleDeg: number, mounting: string) =>
      `${angleDeg.toFixed(1)}° from “${mounting}”: it stands at an angle of its own.`,
    evidence: (of: {
      turnPairs: number
      poses: number
      residualShare: number
      gyroRatio: number
      times: { lagMs: number; rateRatio: number }
    }) =>
      `From ${of.turnPairs} moments of turning and ${of.poses} poses at rest. The rotation leaves ${(100 * of.residualShare).toFixed(1)} % of the angular rate. The board’s gyroscope reads ${of.gyroRatio.toFixed(3)} times the phone’s. Its log began ${(-of.times.lagMs / 1000).toFixed(2)} s after the phone’s; its clock runs at ${(1 / of.times.rateRatio).toFixed(4)} of it.`,
    takeNearest: (mounting: string) => `Take “${mounting}”`,
    takeFound: 'Take the rotation as found',
    kept: 'It is in the target now. Train again before the next export.',
  },
  decision: {
    title: 'Same decision?',
    comparing: 'Comparing…',
    compare: 'Compare decisions',
    about:
      'The board’s samples go through the same model as they are, and the phone’s recording of the same movements beside them.',
    selfTest: {
      before: 'The exported self-test, which asks the same of made samples, is compared on',
      link: 'Prop',
      after: '.',
    },
    sideBySide: 'Side by side',
    seconds: 's',
    phone: 'phone',
    board: 'board',
  },
  ownLog: {
    title: 'The device’s own event log',
    lines: 'Lines that begin with “event”, of the log above',
    compare: 'Compare to the bit',
    allSame: (total: number) => `All ${total} events are the same, word for word.`,
    differs: (agreeing: number, total: number) =>
      `${agreeing} of ${total} events agree before the first that does not:`,
    difference: (expected: string | null, found: string | null) =>
      `here   ${expected ?? '(none)'}\ndevice ${found ?? '(none)'}`,
  },
}
