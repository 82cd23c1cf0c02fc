import type { Take } from '../../shared/model/library'
import { GESTURE } from '../../shared/words/en/gesture'
import { Button, route, SelectField, useApp, useSamples } from '../common'
import { TakeFacts } from './take-facts'
import { TakeQuality } from './take-quality'
import { Trimmer } from './trimmer'

/** What is known of one take, and what can be done with it. Its samples stay as recorded. */
export function TakeDetail({ take }: { take: Take }) {
  const app = useApp()
  const [samples] = useSamples([take])
  const gestures = app.library.current.value?.gestures ?? []
  return (
    <div class="take-open">
      <p class="quiet small">{recordedText(take)}</p>
      <TakeQuality take={take} />
      {samples !== undefined && (
        <Trimmer
          samples={samples}
          durationMs={take.durationMs}
          trim={take.trim}
          onTrim={(trim) => void app.library.trim(take.id, trim)}
        />
      )}
      <SelectField
        label={GESTURE.gestureLabel}
        value={take.gestureId}
        options={gestures.map(({ id, name }) => ({ value: id, text: name }))}
        onChange={(gestureId) => void app.library.relabel(take.id, gestureId)}
      />
      <TakeFacts take={take} />
      <div class="buttons">
        <Button href={route('replay', take.id)}>{GESTURE.toReplay}</Button>
        <Button onClick={() => void app.library.removeRecordings([take.id])}>
          {GESTURE.delete}
        </Button>
      </div>
    </div>
  )
}

function recordedText({ recordedAt, sampleCount, device }: Take): string {
  const when = new Date(recordedAt)
  const time = Number.isNaN(when.getTime())
    ? recordedAt
    : when.toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })
  return GESTURE.takeFacts(time, sampleCount, device.rateHz, device.hasGyro, device.label)
}
