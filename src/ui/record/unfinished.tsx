import { durationText, plural } from '../../shared/words/en/numbers'
import { Button, Notice, route, useApp } from '../common'

/** Recordings that were cut off, as by a closed browser: kept or dropped. */
export function Unfinished() {
  const { record } = useApp()
  return (
    <>
      <Waiting />
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

/** Takes of this visit that were left before they were kept or dropped. */
function Waiting() {
  const { record } = useApp()
  const offer = record.offered.value
  if (offer === null) return null
  return (
    <Notice>
      <p>{plural('take', record.waiting.value)} made a moment ago: keep or drop?</p>
      <Button href={route('record', offer.recording.gestureId)}>Look</Button>
    </Notice>
  )
}
