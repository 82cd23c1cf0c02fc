import './record.css'
import { useState } from 'preact/hooks'
import type { SimulatedSource } from '../../sensors/simulated-source'
import type { Gesture } from '../../shared/model/library'
import { RECORD } from '../../shared/words/en/record'
import { Button, Mark, Section, useApp } from '../common'
import { DragPad } from './drag-pad'
import { asSimulated } from './simulated-source'

const LEAD_MS = 350
const POLL_MS = 50

export interface SimulatedPhoneProps {
  /** Gesture being recorded; null where nothing is held. */
  gesture: Gesture | null
  way: 'hold' | 'hands-free'
}

/** Moves the simulated phone: movements to choose, and a pad to drag. Always marked. */
export function SimulatedPhone({ gesture, way }: SimulatedPhoneProps) {
  const { motion, record } = useApp()
  const [busy, setBusy] = useState(false)
  const source = asSimulated(motion.source())
  if (source === null) return null
  const holds = gesture !== null && way === 'hold'
  const perform = async (id: string) => {
    if (!holds || record.phase.peek() !== 'idle' || record.offered.peek() !== null) {
      source.perform(id)
      return
    }
    setBusy(true)
    // One pointer cannot hold the button and choose a movement, so the movement holds it.
    const begun = await record.beginHold(gesture.id)
    if (begun.ok) {
      await performToRest(source, id)
      await record.endHold()
    }
    setBusy(false)
  }
  return (
    <Section title={RECORD.simulatedPhone} aside={<Mark kind="simulated" />}>
      <div class="buttons">
        {source.movements().map((movement) => (
          <Button key={movement.id} disabled={busy} onClick={() => void perform(movement.id)}>
            {movement.name}
          </Button>
        ))}
      </div>
      <DragPad
        onDrag={(dx, dy) => source.drag(dx, dy)}
        onDown={() => {
          if (holds && record.offered.peek() === null) void record.beginHold(gesture.id)
        }}
        onUp={() => {
          if (holds) void record.endHold()
        }}
        text={holds ? RECORD.dragRecords : RECORD.dragMoves}
      />
    </Section>
  )
}

async function performToRest(source: SimulatedSource, id: string): Promise<void> {
  await pause(LEAD_MS)
  source.perform(id)
  while (source.busy()) await pause(POLL_MS)
  await pause(LEAD_MS)
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, ms)
  })
}
