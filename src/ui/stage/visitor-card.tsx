import { secondsLeft, type Turn } from '../../shared/stage/turn'
import { STAGE_SCREENS } from '../../shared/words/en/stage-screens'
import { outcomeLine } from '../../shared/words/en/stage-words'
import type { StageState } from '../../state/stage'
import { Button, useApp } from '../common'
import { GestureRibbon } from '../ribbon'

/** What a visitor sees: the movement to try, the countdown, and what came of it. */
export function VisitorCard({ stage, turn }: { stage: StageState; turn: Turn }) {
  const gestures = useApp().library.current.value?.gestures ?? []
  const nameOf = (id: string | null) => gestures.find((one) => one.id === id)?.name ?? null
  const asked = nameOf(turn.asked) ?? ''
  if (turn.step === 'told') {
    return (
      <div class="stage-plate" role="status">
        {turn.outcome === 'right' && <Picture gestureId={turn.asked} size={144} />}
        <p class="stage-name">{outcomeLine(turn.outcome, asked, nameOf(turn.answered))}</p>
        {turn.outcome !== 'right' && <p class="stage-ask">{STAGE_SCREENS.card.askedFor(asked)}</p>}
      </div>
    )
  }
  return (
    <div class="stage-plate" role="status">
      <Lead stage={stage} turn={turn} />
      <Picture key={turn.asked} gestureId={turn.asked} size={turn.step === 'card' ? 240 : 144} />
      <p class="stage-name">{asked}</p>
      {turn.step === 'card' && (
        <div class="buttons stage-card-buttons">
          <Button tone="amber" big onClick={() => stage.ready()}>
            {STAGE_SCREENS.card.ready}
          </Button>
          <Button big onClick={() => stage.nextCard()}>
            {STAGE_SCREENS.card.another}
          </Button>
        </div>
      )}
    </div>
  )
}

function Lead({ stage, turn }: { stage: StageState; turn: Turn }) {
  if (turn.step === 'count') {
    return <p class="stage-count">{secondsLeft(turn, stage.nowMs.value)}</p>
  }
  return (
    <p class="stage-ask">
      {turn.step === 'card' ? STAGE_SCREENS.card.try : STAGE_SCREENS.card.now}
    </p>
  )
}

/** The path that the tip draws, again and again. */
function Picture({ gestureId, size }: { gestureId: string; size: number }) {
  return (
    <div class="stage-picture">
      <GestureRibbon gestureId={gestureId} size={size} draw />
    </div>
  )
}
