import type { Hand } from '../../shared/model/library'
import { Notice, Screen } from '../common'
import { BigButton } from './big-button'

/** Which hand the prop is in: two halves of the thumb's reach. */
export function HandChoice({
  wrong,
  onChoose,
}: {
  wrong: string | null
  onChoose: (hand: Hand) => void
}) {
  return (
    <Screen
      title="Which hand will hold it?"
      foot={
        <div class="session-halves">
          <BigButton meaning="left" onTap={() => onChoose('left')}>
            Left hand
          </BigButton>
          <BigButton meaning="right" onTap={() => onChoose('right')}>
            Right hand
          </BigButton>
        </div>
      }
    >
      <p class="join-lead">
        Keep to it for the whole session, and hold firmly: the phone is the prop.
      </p>
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
    </Screen>
  )
}
