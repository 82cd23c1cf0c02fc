import { RECORD_LEFT } from '../../shared/words/en/record-left'
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
            {RECORD_LEFT.cutOff(
              recording.kind,
              recording.testerCode,
              samples.tMs[samples.tMs.length - 1] ?? 0,
            )}
          </p>
          <div class="buttons">
            <Button onClick={() => void record.keepUnfinished(recording.id)}>
              {RECORD_LEFT.keep}
            </Button>
            <Button onClick={() => void record.dropUnfinished(recording.id)}>
              {RECORD_LEFT.drop}
            </Button>
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
          <p>{RECORD_LEFT.notStored(recording.kind, recording.testerCode, recording.durationMs)}</p>
          <div class="buttons">
            <Button onClick={() => void record.keepHeldBack(recording.id)}>
              {RECORD_LEFT.storeAgain}
            </Button>
            <Button onClick={() => void record.dropHeldBack(recording.id)}>
              {RECORD_LEFT.drop}
            </Button>
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
      <p>{RECORD_LEFT.keepOrDrop(record.waiting.value)}</p>
      <Button href={route('record', offer.recording.gestureId)}>{RECORD_LEFT.look}</Button>
    </Notice>
  )
}
