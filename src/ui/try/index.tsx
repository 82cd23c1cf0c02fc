import './try.css'
import { useEffect, useState } from 'preact/hooks'
import { countLibrary } from '../../shared/present/library-counts'
import { Button, Mark, NextStep, Notice, Progress, Screen, useApp, useWakeLock } from '../common'
import { SignStep } from '../record/sign-step'
import { SimulatedPhone } from '../record/simulated-phone'
import { LiveView } from './live-view'

/** Live recognition with the recogniser's own view of what it sees. */
export function Try(_props: { rest: string[] }) {
  const app = useApp()
  const running = app.live.running.value
  useWakeLock(running)
  useEffect(() => () => void app.live.stop(), [app])
  const simulated = app.motion.kind.value === 'simulated'
  return (
    <Screen
      title="Try"
      aside={simulated && <Mark kind="simulated" />}
      foot={running ? <StopButton /> : undefined}
    >
      {running ? <Running simulated={simulated} /> : <NotRunning />}
    </Screen>
  )
}

function Running({ simulated }: { simulated: boolean }) {
  const { model } = useApp()
  const job = model.value
  return (
    <>
      <SignStep />
      {job.state === 'done' && <LiveView model={job.value.model} />}
      {job.state === 'running' && <Progress progress={job.progress} cancel={job.cancel} />}
      {simulated && <SimulatedPhone gesture={null} way="hands-free" />}
    </>
  )
}

function StopButton() {
  const { live } = useApp()
  return (
    <Button big wide onClick={() => void live.stop()}>
      Stop
    </Button>
  )
}

function NotRunning() {
  const app = useApp()
  const library = app.library.current.value
  const counts = countLibrary(library?.gestures ?? [], app.library.recordings.value)
  if (counts.takes === 0) {
    return (
      <NextStep
        text="The recogniser learns from takes, and there are none yet."
        action="Record takes on Moves"
        href="#/moves"
      />
    )
  }
  return <Start />
}

/** One tap: asks for the sensor, trains when the takes have changed, then listens. */
function Start() {
  const { live, model, motion } = useApp()
  const [starting, setStarting] = useState(false)
  const job = model.value
  const trouble = live.trouble.value
  const start = async (kind: 'phone' | 'simulated') => {
    setStarting(true)
    motion.use(kind)
    await live.start()
    setStarting(false)
  }
  const training = job.state === 'running'
  const stale = job.state !== 'done' || job.stale
  const simulated = motion.kind.value === 'simulated'
  return (
    <div class="try-start">
      {trouble !== null && !starting && (
        <Notice tone="trouble" live>
          <p>{trouble}</p>
        </Notice>
      )}
      <p>
        The phone runs the recogniser that is exported for the board, on the board’s own readings.
        {stale ? ' It is trained on your takes first.' : ''}
      </p>
      {training ? (
        <Progress progress={job.progress} cancel={job.cancel} />
      ) : (
        <>
          <Button
            tone="amber"
            big
            wide
            disabled={starting}
            onClick={() => void start(motion.kind.peek())}
          >
            {starting ? 'Starting …' : simulated ? 'Start with the simulated phone' : 'Start'}
          </Button>
          <Button
            wide
            disabled={starting}
            onClick={() => void start(simulated ? 'phone' : 'simulated')}
          >
            {simulated ? 'Use this phone’s sensors' : 'Use the simulated phone'}
          </Button>
        </>
      )}
    </div>
  )
}
