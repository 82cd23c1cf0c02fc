import { type Conflict, conflictKey } from '../../shared/collect/merge'
import { COLLECT_HOME } from '../../shared/words/en/collect-home'
import { fieldText, valueText } from '../../shared/words/en/collect-words'
import type { BringReport, CollectState } from '../../state/collect'
import { Button, Choice, Section } from '../common'

interface Props {
  collect: CollectState
  report: BringReport
}

/** Labels that were changed apart: each shown with both values, and decided by the person. */
export function Conflicts({ collect, report }: Props) {
  const { conflicts } = report.merge
  if (conflicts.length === 0) return null
  const open = conflicts.filter((one) => !report.decided.has(conflictKey(one))).length
  return (
    <Section title={COLLECT_HOME.decide.bothSides(conflicts.length)}>
      <p class="quiet">{COLLECT_HOME.decide.stillOpen(open)}</p>
      {conflicts.length > 1 && (
        <div class="buttons">
          <Button onClick={() => collect.decideAll('here')}>{COLLECT_HOME.decide.allHere}</Button>
          <Button onClick={() => collect.decideAll('there')}>{COLLECT_HOME.decide.allThere}</Button>
        </div>
      )}
      {conflicts.map((conflict) => (
        <OneConflict
          key={conflictKey(conflict)}
          conflict={conflict}
          collect={collect}
          report={report}
        />
      ))}
    </Section>
  )
}

function OneConflict({ conflict, collect, report }: Props & { conflict: Conflict }) {
  const key = conflictKey(conflict)
  const recording = report.merge.merged.recordings.find(
    ({ contentId }) => contentId === conflict.contentId,
  )
  const when = recording?.recordedAt.slice(0, 16).replace('T', ' ') ?? ''
  const { gestures } = report
  return (
    <Choice
      legend={COLLECT_HOME.decide.ofTake(fieldText(conflict), when, recording?.testerCode ?? '')}
      value={report.decided.get(key)?.id ?? ''}
      options={conflict.choices.map((choice) => ({
        value: choice.id,
        text: valueText(choice, gestures),
      }))}
      onChange={(id) => {
        const choice = conflict.choices.find((one) => one.id === id)
        if (choice !== undefined) collect.decide(key, choice)
      }}
    />
  )
}
