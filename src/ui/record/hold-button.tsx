import type { TargetedKeyboardEvent, TargetedPointerEvent } from 'preact'
import { useState } from 'preact/hooks'
import type { Gesture } from '../../shared/model/library'
import { RECORD } from '../../shared/words/en/record'
import { Notice, useApp } from '../common'
import { wakeSound } from './cues'

/** One take as long as the button is held: by thumb, or by the space bar. */
export function HoldButton({ gesture }: { gesture: Gesture }) {
  const { record } = useApp()
  const [wrong, setWrong] = useState<string | null>(null)
  const holding = record.phase.value === 'holding'
  const saving = record.phase.value === 'saving'

  const begin = async () => {
    wakeSound()
    const begun = await record.beginHold(gesture.id)
    setWrong(begun.ok ? null : begun.message)
  }
  const end = () => void record.endHold()
  const onPointerDown = (event: TargetedPointerEvent<HTMLButtonElement>) => {
    if (event.button !== 0) return
    // A shaking thumb leaves the button; the take goes on until it is lifted.
    event.currentTarget.setPointerCapture(event.pointerId)
    void begin()
  }
  const onKeyDown = (event: TargetedKeyboardEvent<HTMLButtonElement>) => {
    if (event.key !== ' ' && event.key !== 'Enter') return
    event.preventDefault()
    if (!event.repeat) void begin()
  }
  const onKeyUp = (event: TargetedKeyboardEvent<HTMLButtonElement>) => {
    if (event.key === ' ' || event.key === 'Enter') end()
  }
  return (
    <>
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
      <button
        type="button"
        class={holding ? 'hold hold-down' : 'hold'}
        disabled={saving}
        onPointerDown={onPointerDown}
        onPointerUp={end}
        onPointerCancel={end}
        onLostPointerCapture={end}
        onKeyDown={onKeyDown}
        onKeyUp={onKeyUp}
        onContextMenu={(event) => event.preventDefault()}
      >
        {holding ? (
          <>
            <span class="hold-figure">{(record.elapsedMs.value / 1000).toFixed(1)} s</span>
            <span>{RECORD.letGoAtTheEnd}</span>
          </>
        ) : (
          <>
            <span class="hold-name">{RECORD.holdWhileYouMove}</span>
            <span>{RECORD.oneTakeOf(gesture.name)}</span>
          </>
        )}
      </button>
    </>
  )
}
