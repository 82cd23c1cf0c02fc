import type { Prompt } from '../../shared/collect/plan'
import { progressOf } from '../../shared/collect/session-progress'
import { SESSION_RUN } from '../../shared/words/en/session-run'
import type { SessionRunner } from '../../state/session'
import { Button, useApp } from '../common'
import { wakeSound } from '../record/cues'
import { BigButton } from './big-button'

export interface PromptFootProps {
  runner: SessionRunner
  prompt: Prompt
}

/** The one big button of the moment; what is seldom needed stands small beneath, out of a run. */
export function PromptFoot({ runner, prompt }: PromptFootProps) {
  const start = () => {
    wakeSound()
    void runner.start()
  }
  switch (runner.phase.value.name) {
    case 'waiting':
      return (
        <>
          <SmallButtons runner={runner} />
          <BigButton
            tone="amber"
            meaning={`start-${runner.run.value.outcomes.length}`}
            onTap={start}
          >
            {SESSION_RUN.buttons.start}
          </BigButton>
        </>
      )
    case 'paused':
      return (
        <>
          <SmallButtons runner={runner} />
          <BigButton tone="amber" meaning="go-on" onTap={start}>
            {SESSION_RUN.buttons.goOn}
          </BigButton>
        </>
      )
    case 'no-readings':
      return <SensorFoot runner={runner} onStart={start} />
    case 'not-stored':
      return (
        <>
          <SmallButtons runner={runner} />
          <BigButton tone="amber" meaning="store" onTap={start}>
            {SESSION_RUN.buttons.tryAgain}
          </BigButton>
        </>
      )
    case 'doubt':
      return <DoubtFoot runner={runner} />
    case 'resting':
      return (
        <BigButton meaning="end-rest" onTap={() => void runner.endRest()}>
          {SESSION_RUN.buttons.goOnNow}
        </BigButton>
      )
    case 'background':
      return <BackgroundFoot runner={runner} />
    default:
      return (
        <BigButton
          meaning="pause"
          note={
            prompt.kind === 'take' ? SESSION_RUN.buttons.numberOf(prompt.number, prompt.of) : ''
          }
          onTap={() => void runner.pause()}
        >
          {SESSION_RUN.buttons.pause}
        </BigButton>
      )
  }
}

function DoubtFoot({ runner }: { runner: SessionRunner }) {
  return (
    <div class="session-halves">
      <BigButton meaning="keep" onTap={() => void runner.keep()}>
        {SESSION_RUN.buttons.keep}
      </BigButton>
      <BigButton tone="amber" meaning="again" onTap={() => void runner.again()}>
        {SESSION_RUN.buttons.again}
      </BigButton>
    </div>
  )
}

function BackgroundFoot({ runner }: { runner: SessionRunner }) {
  return (
    <div class="session-halves">
      <BigButton meaning="pause-background" onTap={() => void runner.pause()}>
        {SESSION_RUN.buttons.pause}
      </BigButton>
      <BigButton meaning="end-background" onTap={() => void runner.endBackground()}>
        {SESSION_RUN.buttons.enough}
      </BigButton>
    </div>
  )
}

/** Where no sensor can come, a desk can go on with the simulated phone; its takes are marked. */
function SensorFoot({ runner, onStart }: { runner: SessionRunner; onStart: () => void }) {
  const { motion } = useApp()
  const status = motion.status.value
  const isDesk = status === 'no-sensor' || status === 'insecure'
  const simulate = () => {
    motion.use('simulated')
    onStart()
  }
  return (
    <>
      <SmallButtons runner={runner} />
      {isDesk && (
        <Button wide onClick={simulate}>
          {SESSION_RUN.buttons.simulate}
        </Button>
      )}
      <BigButton tone="amber" meaning="sensor" onTap={onStart}>
        {SESSION_RUN.buttons.startSensor}
      </BigButton>
    </>
  )
}

function SmallButtons({ runner }: { runner: SessionRunner }) {
  const { kept } = progressOf(runner.run.value)
  return (
    <div class="session-small">
      {kept > 0 && <Button onClick={() => void runner.undo()}>{SESSION_RUN.buttons.undo}</Button>}
      <Button onClick={() => void runner.skip()}>{SESSION_RUN.buttons.skip}</Button>
      <Button onClick={() => void runner.endEarly()}>{SESSION_RUN.buttons.finish}</Button>
    </div>
  )
}
