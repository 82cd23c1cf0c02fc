import { answersInOrder, lightOf, lightTable } from '../../shared/light/library-light'
import type { LightPlayer } from '../../shared/light/player'
import { runLengthMs } from '../../shared/light/run'
import { FIRST_GESTURE } from '../../shared/light/table'
import type { Library } from '../../shared/model/library'
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
    <Screen title="Light" back={route('prop')}>
      {library.gestures.length > 0 && (
        <Section title="Gestures">
          {gestures.map(({ key, name }) => (
            <AnswerCard key={key} library={library} player={player} answerKey={key} name={name} />
          ))}
        </Section>
      )}
      <Section title="Otherwise">
        {own.map(({ key, name }) => (
          <AnswerCard key={key} library={library} player={player} answerKey={key} name={name} />
        ))}
        <NumberField
          label="Least time between two changes of light"
          unit="ms"
          value={lightOf(library).minChangeMs}
          min={0}
          max={60_000}
          whole
          hint="A gesture that comes sooner waits so long. 600 keeps quick hands from flashing."
          onChange={(minChangeMs) => void app.light.update({ minChangeMs })}
        />
      </Section>
      <AcknowledgementSection library={library} findings={findings} />
      <Section title="Behind it">
        <Card href={route('light', 'led')}>
          <h3>LED and its drive</h3>
          <p class="quiet small">PWM, forward voltages, resistors, current limit</p>
        </Card>
        <Card href={route('light', 'cells')}>
          <h3>Cells</h3>
          <p class="quiet small">How long they last, and what they cannot feed</p>
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
      <Strip run={run} label={`Light of ${name} over time`} />
    </Card>
  )
}
