import type { Hand } from '../../shared/model/library'
import { SESSION_JOIN } from '../../shared/words/en/session-join'
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
      title={SESSION_JOIN.hand.title}
      foot={
        <div class="session-halves">
          <BigButton meaning="left" onTap={() => onChoose('left')}>
            {SESSION_JOIN.hand.left}
          </BigButton>
          <BigButton meaning="right" onTap={() => onChoose('right')}>
            {SESSION_JOIN.hand.right}
          </BigButton>
        </div>
      }
    >
      <p class="join-lead">{SESSION_JOIN.hand.keepToIt}</p>
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
    </Screen>
  )
}
