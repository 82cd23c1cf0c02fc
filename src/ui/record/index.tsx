import './record.css'
import { useEffect, useState } from 'preact/hooks'
import type { Gesture } from '../../shared/model/library'
import { countLibrary } from '../../shared/present/library-counts'
import { RECORD } from '../../shared/words/en/record'
import { prefer, preferences } from '../../state/preferences'
import { Button, Choice, Mark, route, Screen, useApp, useWakeLock } from '../common'
import { Missing } from '../moves/missing'
import { HandsFreeButton } from './hands-free-button'
import { HoldButton } from './hold-button'
import { LiveTrace } from './live-trace'
import { Offered } from './offered'
import { SensorButtons, SensorWords } from './sensor-start'
import { SignStep } from './sign-step'
import { SimulatedPhone } from './simulated-phone'
import { TesterStrip } from './tester-strip'
import { useCues } from './use-cues'

type Way = 'hold' | 'hands-free'

/** Records takes of one gesture. */
export function RecordScreen({ gestureId }: { gestureId: string }) {
  const gesture = useApp().library.current.value?.gestures.find((one) => one.id === gestureId)
  return gesture === undefined ? <Missing what="gesture" /> : <RecordTakes gesture={gesture} />
}

function RecordTakes({ gesture }: { gesture: Gesture }) {
  const { motion, record } = useApp()
  const [way, setWay] = useState<Way>('hold')
  const ready = motion.status.value === 'running'
  const phase = record.phase.value
  useCues(record)
  useWakeLock(ready)
  useEffect(() => () => void record.stop(), [record])
  return (
    <Screen
      title={gesture.name}
      back={route('gesture', gesture.id)}
      aside={motion.kind.value === 'simulated' && <Mark kind="simulated" />}
      foot={
        <div class="foot-stack">
          {!ready && <SensorButtons />}
          {(ready || phase !== 'idle') && <Foot gesture={gesture} way={way} />}
        </div>
      }
    >
      <TesterStrip locked={phase !== 'idle'} />
      {ready ? <SignStep /> : <SensorWords />}
      {(ready || phase !== 'idle') && <LiveTrace />}
      {ready && (
        <>
          <TakeCount gesture={gesture} />
          {phase === 'idle' && <WayChoice way={way} onChange={setWay} />}
          {phase === 'idle' && way === 'hands-free' && <KeepChoice />}
          {motion.kind.value === 'simulated' && <SimulatedPhone gesture={gesture} way={way} />}
        </>
      )}
    </Screen>
  )
}

function WayChoice({ way, onChange }: { way: Way; onChange: (way: Way) => void }) {
  return (
    <Choice
      legend={RECORD.wayOfRecording}
      value={way}
      options={[
        { value: 'hold', text: RECORD.holdAButton },
        { value: 'hands-free', text: RECORD.handsFree },
      ]}
      onChange={onChange}
    />
  )
}

function KeepChoice() {
  return (
    <Choice
      legend={RECORD.goodTakes}
      value={preferences.value.keepGood ? 'keep' : 'ask'}
      options={[
        { value: 'keep', text: RECORD.isKept },
        { value: 'ask', text: RECORD.asksMe },
      ]}
      onChange={(value) => prefer({ keepGood: value === 'keep' })}
    />
  )
}

function Foot({ gesture, way }: { gesture: Gesture; way: Way }) {
  const { offered, phase, stop } = useApp().record
  const offer = offered.value
  if (offer !== null && phase.value !== 'holding') {
    return (
      <div class="foot-stack">
        <Offered offer={offer} />
        {phase.value === 'hands-free' && (
          <Button onClick={() => void stop()}>{RECORD.stopListening}</Button>
        )}
      </div>
    )
  }
  const holds = way === 'hold' && phase.value !== 'hands-free'
  return holds ? <HoldButton gesture={gesture} /> : <HandsFreeButton gesture={gesture} />
}

function TakeCount({ gesture }: { gesture: Gesture }) {
  const { library, record } = useApp()
  const [counts] = countLibrary([gesture], library.recordings.value).gestures
  const takes = counts?.takes ?? []
  const code = record.testerCode.value
  const own = takes.filter((take) => take.testerCode === code).length
  return (
    <p class="quiet" role="status">
      {RECORD.takeTally(takes.length, gesture.name, own, code)}
    </p>
  )
}
