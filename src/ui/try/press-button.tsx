import './press-button.css'
import type { TargetedKeyboardEvent, TargetedPointerEvent } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { TRY } from '../../shared/words/en/try'
import { useApp } from '../common'

/** The prop's button: a model with one answers what was moved while it was held. */
export function PressButton() {
  const { live } = useApp()
  const [down, setDown] = useState(false)
  const press = (now: boolean) => {
    if (now === down) return
    setDown(now)
    live.press(now)
  }
  useEffect(() => () => live.press(false), [live])
  const onPointerDown = (event: TargetedPointerEvent<HTMLButtonElement>) => {
    if (event.button !== 0) return
    // A shaking thumb leaves the button; it stays pressed until it is lifted.
    event.currentTarget.setPointerCapture(event.pointerId)
    press(true)
  }
  const onKeyDown = (event: TargetedKeyboardEvent<HTMLButtonElement>) => {
    if (event.key !== ' ' && event.key !== 'Enter') return
    event.preventDefault()
    if (!event.repeat) press(true)
  }
  const end = () => press(false)
  return (
    <button
      type="button"
      class={down ? 'press press-down' : 'press'}
      onPointerDown={onPointerDown}
      onPointerUp={end}
      onPointerCancel={end}
      onLostPointerCapture={end}
      onKeyDown={onKeyDown}
      onKeyUp={end}
      onBlur={end}
      onContextMenu={(event) => event.preventDefault()}
    >
      {down ? TRY.letGo : TRY.holdWhileYouMove}
    </button>
  )
}
