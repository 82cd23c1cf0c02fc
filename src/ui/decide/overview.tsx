import { dataSentence } from '../../shared/words/en/data-words'
import { DECIDE_SCREENS } from '../../shared/words/en/decide-screens'
import { gesturesSentence } from '../../shared/words/en/pair-words'
import { sensorSentence } from '../../shared/words/en/sensor-words'
import type { Job } from '../../state/app'
import { Card, NextStep, Screen, useApp } from '../common'
import { useDecide } from './use-decide'

/** The three decisions, each as the sentence that was found last. */
export function Overview() {
  const { gestures, data, sensor } = useDecide()
  const { library } = useApp()
  const hasTakes = library.recordings.value.some(({ kind }) => kind === 'take')
  return (
    <Screen title={DECIDE_SCREENS.title} back="#/proof">
      <p class="quiet">{DECIDE_SCREENS.about}</p>
      {!hasTakes && (
        <NextStep
          text={DECIDE_SCREENS.noTakesYet}
          action={DECIDE_SCREENS.recordOnMoves}
          href="#/moves"
        />
      )}
      <Decision
        href="#/decide/gestures"
        title={DECIDE_SCREENS.gestures}
        text={said(gestures.value, gesturesSentence)}
      />
      <Decision
        href="#/decide/data"
        title={DECIDE_SCREENS.data.title}
        text={said(data.value, dataSentence)}
      />
      <Decision
        href="#/decide/sensor"
        title={DECIDE_SCREENS.sensor.title}
        text={said(sensor.value, sensorSentence)}
      />
    </Screen>
  )
}

function said<T>(job: Job<T>, sentence: (value: T) => string): string {
  if (job.state === 'done') return sentence(job.value)
  if (job.state === 'running') return DECIDE_SCREENS.running(job.progress.what)
  return job.state === 'failed' ? job.message : DECIDE_SCREENS.notMeasured
}

function Decision({ href, title, text }: { href: string; title: string; text: string }) {
  return (
    <Card href={href}>
      <h2>{title}</h2>
      <p class="decide-said">{text}</p>
    </Card>
  )
}
