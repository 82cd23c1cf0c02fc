import { RECORD } from '../../shared/words/en/record'
import type { OfferedTake } from '../../state/app'
import { Button, useApp } from '../common'

/** The take just made: what was seen in it, and keep or drop. */
export function Offered({ offer }: { offer: OfferedTake }) {
  const { record, library } = useApp()
  const good = offer.quality.every((word) => word.code === 'good')
  const saving = record.phase.value === 'saving'
  const { gestureId } = offer.recording
  const name = library.current.value?.gestures.find((one) => one.id === gestureId)?.name
  const behind = record.waiting.value - 1
  return (
    <div class="foot-stack">
      <p class="quiet">{RECORD.offer(name, behind)}</p>
      <div role="status">
        <ul class={good ? 'quality' : 'quality quality-doubt'}>
          {offer.quality.map((word) => (
            <li key={word.code}>{word.text}</li>
          ))}
        </ul>
      </div>
      <div class="offered-buttons">
        <Button
          tone={good ? 'plain' : 'amber'}
          big
          disabled={saving}
          onClick={() => void record.drop()}
        >
          {RECORD.drop}
        </Button>
        <Button
          tone={good ? 'amber' : 'plain'}
          big
          disabled={saving}
          onClick={() => void record.keep()}
        >
          {RECORD.keep}
        </Button>
      </div>
    </div>
  )
}
