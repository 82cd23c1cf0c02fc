import './try.css'
import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { countLibrary } from '../../shared/present/library-counts'
import { TRY } from '../../shared/words/en/try'
import {
  Button,
  Mark,
  NextStep,
  Notice,
  Progress,
  Screen,
  useApp,
  usePlaceStep,
  useWakeLock,
} from '../common'
import { LiveLight } from '../light/live-light'
import { SignStep } from '../record/sign-step'
import { SimulatedPhone } from '../record/simulated-phone'
import { Known } from './known'
import { LiveView } from './live-view'

/** Live recognition with the recogniser's own view of what it sees. */
export function Try(_props: { rest: string[] }) {
  const app = useApp()
  const running = app.live.running.value
  const library = app.library.current.value
  const { takes } = countLibrary(library?.gestures ?? [], app.library.recordings.value)
  useWakeLock(running)
  useEffect(() => () => void app.live.stop(), [app])
  const simulated = app.motion.kind.value === 'simulated'
  const mark = simulated && <Mark kind="simulated" />
  if (running) {
    return (
      <Screen title={TRY.try} aside={mark} foot={<StopButton />}>
        <Running simulated={simulated} />
      </Screen>
    )
  }
  if (takes > 0) return <Start mark={mark} />
  return (
    <Screen title={TRY.try} aside={mark}>
      <NextStep text={TRY.noTakesYet} action={TRY.recordTakes} href="#/moves" />
    </Screen>
  )
}

function Running({ simulated }: { simulated: boolean }) {
  const { live, model } = useApp()
  const job = model.value
  if (job.state === 'running') return <Progress progress={job.progress} cancel={job.cancel} />
  if (job.state !== 'done') return null
  const pressing = job.value.model.button ? { press: live.press } : {}
  return (
    <>
      <SignStep />
      <LiveLight model={job.value.model} />
      <LiveView
        model={job.value.model}
        beside={simulated && <SimulatedPhone gesture={null} way="hands-free" {...pressing} />}
      />
    </>
  )
}

function StopButton() {
  const { live } = useApp()
  return (
    <Button wide onClick={() => void live.stop()}>
      {TRY.stop}
    </Button>
  )
}

/** One tap: asks for the sensor, trains when the takes have changed, then listens. */
function Start({ mark }: { mark: ComponentChildren }) {
  const { live, model, motion } = useApp()
  const [starting, setStarting] = useState(false)
  const job = model.value
  const trouble = live.trouble.value
  const start = async (kind: 'phone' | 'simulated') => {
    setStarting(true)
    try {
      motion.use(kind)
      await live.start()
    } finally {
      setStarting(false)
    }
  }
  const stale = job.state !== 'done' || job.stale
  const step = usePlaceStep('try')
  const foot =
    job.state === 'running' ? (
      <Progress progress={job.progress} cancel={job.cancel} />
    ) : (
      <StartButtons starting={starting} start={(kind) => void start(kind)} />
    )
  return (
    <Screen title={TRY.try} aside={mark} foot={foot}>
      {trouble !== null && !starting && (
        <Notice tone="trouble" live>
          <p>{trouble}</p>
        </Notice>
      )}
      <p>{TRY.whatRuns(stale)}</p>
      <Known />
      <Button wide href="#/teach">
        {TRY.toTeach}
      </Button>
      <Button wide href="#/stage">
        {TRY.toStage}
      </Button>
      {step !== null && <NextStep quiet {...step} />}
    </Screen>
  )
}

interface StartButtonsProps {
  starting: boolean
  start: (kind: 'phone' | 'simulated') => void
}

function StartButtons({ starting, start }: StartButtonsProps) {
  const simulated = useApp().motion.kind.value === 'simulated'
  const [own, other] = simulated
    ? (['simulated', 'phone'] as const)
    : (['phone', 'simulated'] as const)
  const text = simulated ? TRY.startSimulated : TRY.start
  return (
    <div class="try-start">
      <Button tone="amber" big wide disabled={starting} onClick={() => start(own)}>
        {starting ? TRY.starting : text}
      </Button>
      <Button tone="quiet" wide disabled={starting} onClick={() => start(other)}>
        {simulated ? TRY.useSensors : TRY.useSimulated}
      </Button>
    </div>
  )
}
