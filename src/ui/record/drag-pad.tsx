import type { TargetedPointerEvent } from 'preact'
import { useRef } from 'preact/hooks'

export interface DragPadProps {
  /** CSS pixels since the last call, right and down positive. */
  onDrag: (dxPx: number, dyPx: number) => void
  onDown: () => void
  onUp: () => void
  text: string
}

/** A field in which the pointer moves the simulated hand. */
export function DragPad({ onDrag, onDown, onUp, text }: DragPadProps) {
  const last = useRef<{ x: number; y: number } | null>(null)
  const release = () => {
    if (last.current === null) return
    last.current = null
    onUp()
  }
  const move = (event: TargetedPointerEvent<HTMLDivElement>) => {
    const from = last.current
    if (from === null) return
    last.current = { x: event.clientX, y: event.clientY }
    onDrag(event.clientX - from.x, event.clientY - from.y)
  }
  return (
    <div
      class="drag-pad"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        last.current = { x: event.clientX, y: event.clientY }
        onDown()
      }}
      onPointerMove={move}
      onPointerUp={release}
      onPointerCancel={release}
      onLostPointerCapture={release}
    >
      {text}
    </div>
  )
}
