import { answersInOrder, lightOf, lightTable } from '../../shared/light/library-light'
import type { LightPlayer } from '../../shared/light/player'
import { runLengthMs } from '../../shared/light/run'
import { FIRST_GESTURE } from '../../shared/light/table'
import type { Library } from '../../shared/model/library'
import { LIGHT_ANSWERS } from '../../shared/words/en/light-answers'
import { Card, route, Screen, Section, useApp } from '../common'
import { NumberField } from '../prop/number-field'
import { AcknowledgementSection } from './acknowledgement'
import { Strip } from './strip'
import { usePlayer, useRun } from './use-player'
import { useLibrarySafety } from './use-safety'

const STRIP_MS = 6_000

/** All answers of the prop at a glance, each as its light over time. */
export function LightOverview({ library }: { library: Library }) {
  const app = useApp()
  const player = usePlayer()
  const findings = useLibrarySafety(player, library)
  const answers = answersInOrder(library)
  const own = answers.slice(0, FIRST_GESTURE)
  const gestures = answers.slice(FIRST_GESTURE)
  return (
    <Screen title={LIGHT_ANSWERS.title} back={route('prop')}>
      {library.gestures.length > 0 && (
        <Section title={LIGHT_ANSWERS.gestures}>
          {gestures.map(({ key, name }) => (
            <AnswerCard key={key} library={library} player={player} answerKey={key} name={name} />
          ))}
        </Section>
      )}
      <Section title={LIGHT_ANSWERS.otherwise}>
        {own.map(({ key, name }) => (
          <AnswerCard key={key} library={library} player={player} answerKey={key} name={name} />
        ))}
        <NumberField
          label={LIGHT_ANSWERS.leastChange}
          unit="ms"
          value={lightOf(library).minChangeMs}
          min={0}
          max={60_000}
          whole
          hint={LIGHT_ANSWERS.leastChangeHint}
          onChange={(minChangeMs) => void app.light.update({ minChangeMs })}
        />
      </Section>
      <AcknowledgementSection library={library} findings={findings} />
      <Section title={LIGHT_ANSWERS.behindIt}>
        <Card href={route('light', 'led')}>
          <h3>{LIGHT_ANSWERS.led}</h3>
          <p class="quiet small">{LIGHT_ANSWERS.ledHint}</p>
        </Card>
        <Card href={route('light', 'cells')}>
          <h3>{LIGHT_ANSWERS.cells}</h3>
          <p class="quiet small">{LIGHT_ANSWERS.cellsHint}</p>
        </Card>
      </Section>
    </Screen>
  )
}

function AnswerCard(props: {
  library: Library
  player: LightPlayer | null
  answerKey: string
  name: string
}) {
  const { library, player, answerKey, name } = props
  const number = answersInOrder(library).findIndex(({ key }) => key === answerKey)
  const lengthMs = Math.min(STRIP_MS, runLengthMs(lightTable(library), number))
  const run = useRun(player, library, answerKey, lengthMs)
  return (
    <Card href={route('light', answerKey)}>
      <h3>{name}</h3>
      <Strip run={run} label={LIGHT_ANSWERS.lightOf(name)} />
    </Card>
  )
}
