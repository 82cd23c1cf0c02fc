import { hitsOf, totalHits } from '../../shared/stage/tally'
import { STAGE_SCREENS } from '../../shared/words/en/stage-screens'
import { turnsLine } from '../../shared/words/en/stage-words'
import type { StageState } from '../../state/stage'
import { Button, Section, useApp } from '../common'
import { GestureRibbon } from '../ribbon'

/** Hits of the evening by gesture. Counts only: nothing about who made them or when. */
export function TallySection({ stage }: { stage: StageState }) {
  const gestures = useApp().library.current.value?.gestures ?? []
  const tally = stage.tally.value
  const total = totalHits(tally)
  if (total === 0 && tally.asked === 0) {
    return (
      <Section title={STAGE_SCREENS.tally.title}>
        <p class="quiet">{STAGE_SCREENS.tally.nothing}</p>
      </Section>
    )
  }
  return (
    <Section
      title={STAGE_SCREENS.tally.title}
      aside={
        <Button tone="quiet" onClick={() => stage.resetTally()}>
          {STAGE_SCREENS.tally.reset}
        </Button>
      }
    >
      <p class="quiet small">
        {STAGE_SCREENS.tally.answered(
          total,
          startText(tally.sinceAt),
          tally.asked > 0 ? turnsLine(tally.asked, tally.right) : '',
        )}
      </p>
      <ul class="stage-tally">
        {gestures.map(({ id, name }) => (
          <li key={id}>
            <GestureRibbon gestureId={id} size={44} />
            <span>{name}</span>
            <b>{hitsOf(tally, id)}</b>
          </li>
        ))}
      </ul>
    </Section>
  )
}

function startText(at: string): string {
  return new Date(at).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })
}
