import { RECORD } from '../../shared/words/en/record'
import { Button, Notice, route, useApp } from '../common'

/** Recordings that were cut off, as by a closed browser, or found no room: kept or dropped. */
export function Unfinished() {
  const { record } = useApp()
  return (
    <>
      <Waiting />
      <HeldBack />
      {record.unfinished.value.map(({ recording, samples }) => (
        <Notice key={recording.id}>
          <p>
            {RECORD.cutOff(
              recording.kind,
              recording.testerCode,
              samples.tMs[samples.tMs.length - 1] ?? 0,
            )}
          </p>
          <div class="buttons">
            <Button onClick={() => void record.keepUnfinished(recording.id)}>{RECORD.keep}</Button>
            <Button onClick={() => void record.dropUnfinished(recording.id)}>{RECORD.drop}</Button>
          </div>
        </Notice>
      ))}
    </>
  )
}

/** Recordings of this visit that could not be stored at their end. */
export function HeldBack() {
  const { record } = useApp()
  return (
    <>
      {record.heldBack.value.map(({ recording }) => (
        <Notice key={recording.id} tone="trouble">
          <p>{RECORD.notStored(recording.kind, recording.testerCode, recording.durationMs)}</p>
          <div class="buttons">
            <Button onClick={() => void record.keepHeldBack(recording.id)}>
              {RECORD.storeAgain}
            </Button>
            <Button onClick={() => void record.dropHeldBack(recording.id)}>{RECORD.drop}</Button>
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
      <p>{RECORD.keepOrDrop(record.waiting.value)}</p>
      <Button href={route('record', offer.recording.gestureId)}>{RECORD.look}</Button>
    </Notice>
  )
}
