import { durationText } from '../../shared/present/numbers'
import { Button, Notice, useApp } from '../common'

/** Recordings that were cut off, as by a closed browser: kept or dropped. */
export function Unfinished() {
  const { record } = useApp()
  return (
    <>
      {record.unfinished.value.map(({ recording, samples }) => (
        <Notice key={recording.id}>
          <p>
            A {recording.kind === 'take' ? 'take' : 'background recording'} by{' '}
            {recording.testerCode} was cut off;{' '}
            {durationText(samples.tMs[samples.tMs.length - 1] ?? 0)} of it are there.
          </p>
          <div class="buttons">
            <Button onClick={() => void record.keepUnfinished(recording.id)}>Keep</Button>
            <Button onClick={() => void record.dropUnfinished(recording.id)}>Drop</Button>
          </div>
        </Notice>
      ))}
    </>
  )
}
