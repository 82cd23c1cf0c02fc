import './record.css'
import { useEffect, useState } from 'preact/hooks'
import { countLibrary } from '../../shared/present/library-counts'
import { RECORD } from '../../shared/words/en/record'
import { Button, HOME, Mark, Notice, Screen, Section, useApp, useWakeLock } from '../common'
import { BackgroundList } from './background-list'
import { wakeSound } from './cues'
import { LiveTrace } from './live-trace'
import { SensorButtons, SensorWords } from './sensor-start'
import { SignStep } from './sign-step'
import { SimulatedPhone } from './simulated-phone'
import { TesterStrip } from './tester-strip'
import { HeldBack } from './unfinished'
import { useCues } from './use-cues'

/** Records what is no gesture, and lists what there is of it. */
export function BackgroundScreen() {
  const { motion, record, library } = useApp()
  const ready = motion.status.value === 'running'
  const running = record.phase.value === 'background'
  const counts = countLibrary([], library.recordings.value)
  useCues(record)
  useWakeLock(running)
  useEffect(() => () => void record.stop(), [record])
  return (
    <Screen
      title={RECORD.background}
      back={HOME}
      aside={motion.kind.value === 'simulated' && <Mark kind="simulated" />}
      foot={
        <div class="foot-stack">
          {!ready && <SensorButtons />}
          {(ready || running) && <BackgroundButton />}
        </div>
      }
    >
      <HeldBack />
      <p>{RECORD.backgroundLead}</p>
      <TesterStrip locked={running} />
      {ready ? <SignStep /> : <SensorWords />}
      {(ready || running) && <LiveTrace />}
      {ready && motion.kind.value === 'simulated' && (
        <SimulatedPhone gesture={null} way="hands-free" />
      )}
      {counts.backgrounds.length > 0 && (
        <Section title={RECORD.recordingsAndTime(counts.backgrounds.length, counts.backgroundMs)}>
          <BackgroundList backgrounds={counts.backgrounds} />
        </Section>
      )}
    </Screen>
  )
}

function BackgroundButton() {
  const { record } = useApp()
  const [wrong, setWrong] = useState<string | null>(null)
  const begin = async () => {
    wakeSound()
    const begun = await record.beginBackground()
    setWrong(begun.ok ? null : begun.message)
  }
  if (record.phase.value === 'background') {
    return (
      <div class="foot-stack">
        <p class="running-time" role="timer">
          {clock(record.elapsedMs.value)}
        </p>
        <Button big wide onClick={() => void record.stop()}>
          {RECORD.stopAndKeep}
        </Button>
      </div>
    )
  }
  return (
    <div class="foot-stack">
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
      <Button
        tone="amber"
        big
        wide
        disabled={record.phase.value !== 'idle'}
        onClick={() => void begin()}
      >
        {RECORD.recordBackground}
      </Button>
    </div>
  )
}

/** Minutes and seconds, as on a clock that is read from afar. */
function clock(ms: number): string {
  const seconds = Math.floor(ms / 1000)
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`
}
