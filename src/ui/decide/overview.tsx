import { dataSentence } from '../../shared/words/en/data-words'
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
    <Screen title="Decide" back="#/proof">
      <p class="quiet">Before a part is bought or a tester invited: what the takes at hand say.</p>
      {!hasTakes && (
        <NextStep
          text="There are no takes at hand yet."
          action="Record takes on Moves"
          href="#/moves"
        />
      )}
      <Decision
        href="#/decide/gestures"
        title="Which gestures"
        text={said(gestures.value, gesturesSentence)}
      />
      <Decision href="#/decide/data" title="How much data" text={said(data.value, dataSentence)} />
      <Decision
        href="#/decide/sensor"
        title="Which sensor is enough"
        text={said(sensor.value, sensorSentence)}
      />
    </Screen>
  )
}

function said<T>(job: Job<T>, sentence: (value: T) => string): string {
  if (job.state === 'done') return sentence(job.value)
  if (job.state === 'running') return `${job.progress.what} …`
  return job.state === 'failed' ? job.message : 'Not measured yet.'
}

function Decision({ href, title, text }: { href: string; title: string; text: string }) {
  return (
    <Card href={href}>
      <h2>{title}</h2>
      <p class="decide-said">{text}</p>
    </Card>
  )
}
