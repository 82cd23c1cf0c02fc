import type { Recording } from '../../shared/model/library'
import type { Replay } from '../../shared/model/replay'
import { countsAtEnd } from '../../shared/present/target-choices'
import { REPLAY_VIEW } from '../../shared/words/en/replay-view'

/** The recording as it came in, and what the target's sensor could not have said of it. */
export function RawFacts({ recording, replay }: { recording: Recording; replay: Replay }) {
  const { facts } = REPLAY_VIEW
  const { device, gaps } = recording
  const accel = countsAtEnd(replay.counts, [0, 1, 2])
  const gyro = countsAtEnd(replay.counts, [3, 4, 5])
  const longestMs = Math.max(0, ...gaps.map((gap) => gap.endMs - gap.startMs))
  const rows: [string, string][] = [
    [facts.recorded.name, facts.recorded.text(recording.sampleCount, recording.durationMs)],
    [facts.rate.name, facts.rate.text(device.rateHz)],
    [facts.replayedAt.name, facts.replayedAt.text(replay.rateHz)],
    [facts.roundedTo.name, facts.roundedTo.text(device.accelStepMps2, device.gyroStepDps)],
    [facts.sign.name, facts.sign.text[device.accelSign]],
    [facts.gaps.name, facts.gaps.text(gaps.length, longestMs)],
    [facts.clipped.name, facts.clipped.text(accel, gyro)],
    [facts.source.name, facts.source.text(recording.source, device.label)],
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
