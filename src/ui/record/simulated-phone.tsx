import './record.css'
import { useState } from 'preact/hooks'
import type { SimulatedSource } from '../../sensors/simulated-source'
import type { Gesture } from '../../shared/model/library'
import { HAND_MARGIN_MS } from '../../shared/training/press'
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
  /** Presses and releases the prop's button, for each movement and while the pad is dragged. */
  press?: (down: boolean) => void
}

/** Moves the simulated phone: movements to choose, and a pad to drag. Always marked. */
export function SimulatedPhone({ gesture, way, press }: SimulatedPhoneProps) {
  const { motion, record } = useApp()
  const [busy, setBusy] = useState(false)
  const source = asSimulated(motion.source())
  if (source === null) return null
  const holds = gesture !== null && way === 'hold'
  const perform = async (id: string) => {
    if (press !== undefined) {
      setBusy(true)
      await performPressed(source, id, press)
      setBusy(false)
      return
    }
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
          press?.(true)
          if (holds && record.offered.peek() === null) void record.beginHold(gesture.id)
        }}
        onUp={() => {
          press?.(false)
          if (holds) void record.endHold()
        }}
        text={holds ? RECORD.dragRecords : RECORD.dragMoves}
      />
    </Section>
  )
}

/** One pointer cannot hold the prop's button and choose a movement, so the movement holds it. */
export async function performPressed(
  source: SimulatedSource,
  id: string,
  press: (down: boolean) => void,
): Promise<void> {
  press(true)
  await performToRest(source, id, HAND_MARGIN_MS)
  press(false)
}

async function performToRest(source: SimulatedSource, id: string, leadMs = LEAD_MS): Promise<void> {
  await pause(leadMs)
  source.perform(id)
  while (source.busy()) await pause(POLL_MS)
  await pause(leadMs)
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, ms)
  })
}
