import type { Prompt } from '../../shared/collect/plan'
import { progressOf } from '../../shared/collect/session-progress'
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
            meaning={`start ${runner.run.value.outcomes.length}`}
            onTap={start}
          >
            Start
          </BigButton>
        </>
      )
    case 'paused':
      return (
        <>
          <SmallButtons runner={runner} />
          <BigButton tone="amber" meaning="go-on" onTap={start}>
            Go on
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
            Try again
          </BigButton>
        </>
      )
    case 'doubt':
      return <DoubtFoot runner={runner} />
    case 'resting':
      return (
        <BigButton meaning="end-rest" onTap={() => void runner.endRest()}>
          Go on now
        </BigButton>
      )
    case 'background':
      return <BackgroundFoot runner={runner} />
    default:
      return (
        <BigButton
          meaning="pause"
          note={prompt.kind === 'take' ? `${prompt.number} of ${prompt.of}` : ''}
          onTap={() => void runner.pause()}
        >
          Pause
        </BigButton>
      )
  }
}

function DoubtFoot({ runner }: { runner: SessionRunner }) {
  return (
    <div class="session-halves">
      <BigButton meaning="keep" onTap={() => void runner.keep()}>
        Keep it
      </BigButton>
      <BigButton tone="amber" meaning="again" onTap={() => void runner.again()}>
        Again
      </BigButton>
    </div>
  )
}

function BackgroundFoot({ runner }: { runner: SessionRunner }) {
  return (
    <div class="session-halves">
      <BigButton meaning="pause-background" onTap={() => void runner.pause()}>
        Pause
      </BigButton>
      <BigButton meaning="end-background" onTap={() => void runner.endBackground()}>
        Enough
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
          Use the simulated phone
        </Button>
      )}
      <BigButton tone="amber" meaning="sensor" onTap={onStart}>
        Start the sensor again
      </BigButton>
    </>
  )
}

function SmallButtons({ runner }: { runner: SessionRunner }) {
  const { kept } = progressOf(runner.run.value)
  return (
    <div class="session-small">
      {kept > 0 && <Button onClick={() => void runner.undo()}>Undo the last</Button>}
      <Button onClick={() => void runner.skip()}>Skip this</Button>
      <Button onClick={() => void runner.endEarly()}>Finish</Button>
    </div>
  )
}
