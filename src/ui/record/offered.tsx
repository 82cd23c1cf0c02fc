import type { OfferedTake } from '../../state/app'
import { Button, useApp } from '../common'

/** The take just made: what was seen in it, and keep or drop. */
export function Offered({ offer }: { offer: OfferedTake }) {
  const { record } = useApp()
  const good = offer.quality.every((word) => word.code === 'good')
  const saving = record.phase.value === 'saving'
  return (
    <div class="foot-stack">
      <ul class={good ? 'quality' : 'quality quality-doubt'} role="status">
        {offer.quality.map((word) => (
          <li key={word.code}>{word.text}</li>
        ))}
      </ul>
      <div class="offered-buttons">
        <Button
          tone={good ? 'plain' : 'amber'}
          big
          disabled={saving}
          onClick={() => void record.drop()}
        >
          Drop
        </Button>
        <Button
          tone={good ? 'amber' : 'plain'}
          big
          disabled={saving}
          onClick={() => void record.keep()}
        >
          Keep
        </Button>
      </div>
    </div>
  )
}
