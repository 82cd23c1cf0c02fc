import type { Recording } from '../../shared/model/library'
import type { Replay } from '../../shared/model/replay'
import { countsAtEnd } from '../../shared/present/target-choices'
import { durationText, plural, shortNumber, UNIT_SPACE } from '../../shared/words/en/numbers'

/** The recording as it came in, and what the target's sensor could not have said of it. */
export function RawFacts({ recording, replay }: { recording: Recording; replay: Replay }) {
  const { device, gaps } = recording
  const accel = countsAtEnd(replay.counts, [0, 1, 2])
  const gyro = countsAtEnd(replay.counts, [3, 4, 5])
  const rows: [string, string][] = [
    [
      'Recorded',
      `${plural('sample', recording.sampleCount)} in ${durationText(recording.durationMs)}`,
    ],
    ['Rate', device.rateHz > 0 ? hertz(device.rateHz) : 'not known'],
    ['Replayed at', hertz(replay.rateHz)],
    ['Rounded to', roundingText(device.accelStepMps2, device.gyroStepDps)],
    ['Sign of acceleration', signText(device.accelSign)],
    ['Gaps', gaps.length === 0 ? 'none' : gapsText(gaps)],
    ['Clipped at the target’s range', clippedText(accel, gyro)],
    ['Source', device.label === '' ? recording.source : `${recording.source}, ${device.label}`],
  ]
  return (
    <dl class="raw-facts">
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  )
}

function hertz(rate: number): string {
  return `${shortNumber(rate)}${UNIT_SPACE}Hz`
}

function roundingText(accelStep: number, gyroStep: number): string {
  if (accelStep === 0 && gyroStep === 0) return 'no step found'
  const part = (step: number, unit: string) =>
    step === 0 ? `no step (${unit})` : `${shortNumber(step)}${UNIT_SPACE}${unit}`
  return `${part(accelStep, 'm/s²')}, ${part(gyroStep, 'deg/s')}`
}

function signText(sign: 1 | -1 | 0): string {
  if (sign === 0) return 'not found out: lay the phone flat once'
  return sign === 1 ? 'as the standard has it' : 'inverted, turned round here'
}

function gapsText(gaps: { startMs: number; endMs: number }[]): string {
  const longest = Math.max(...gaps.map((gap) => gap.endMs - gap.startMs))
  return `${gaps.length}, longest ${durationText(longest)}`
}

function clippedText(accel: number, gyro: number): string {
  if (accel === 0 && gyro === 0) return 'nothing'
  return `${plural('value', accel)} of acceleration, ${gyro} of turning: choose a larger range`
}
