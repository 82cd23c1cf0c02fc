import { useEffect, useRef, useState } from 'preact/hooks'
import { STAGE_SCREENS } from '../../shared/words/en/stage-screens'

const HOLD_MS = 2000
const RADIUS = 30
const AROUND = 2 * Math.PI * RADIUS

/** Leaves when held for two seconds; its ring shows how far it is. A touch does nothing. */
export function HoldToLeave({ onLeave }: { onLeave: () => void }) {
  const [beganMs, setBeganMs] = useState<number | null>(null)
  const ring = useRef<SVGCircleElement>(null)
  const held = beganMs !== null
  useEffect(() => {
    if (beganMs === null) return
    let frame = 0
    const draw = () => {
      const share = Math.min(1, (performance.now() - beganMs) / HOLD_MS)
      ring.current?.setAttribute('stroke-dashoffset', String(AROUND * (1 - share)))
      if (share < 1) frame = requestAnimationFrame(draw)
      else onLeave()
    }
    draw()
    return () => cancelAnimationFrame(frame)
  }, [beganMs])
  const begin = () => setBeganMs(performance.now())
  const end = () => setBeganMs(null)
  return (
    <button
      type="button"
      class="stage-leave"
      aria-label={STAGE_SCREENS.show.leave}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        begin()
      }}
      onPointerUp={end}
      onPointerCancel={end}
      onLostPointerCapture={end}
      onKeyDown={(event) => {
        if ((event.key === ' ' || event.key === 'Enter') && !event.repeat) begin()
      }}
      onKeyUp={end}
      onBlur={end}
    >
      <svg viewBox="0 0 72 72" aria-hidden="true">
        <circle class="stage-leave-rim" cx="36" cy="36" r={RADIUS} />
        {held && (
          <circle
            ref={ring}
            class="stage-leave-ring"
            cx="36"
            cy="36"
            r={RADIUS}
            stroke-dasharray={AROUND}
            stroke-dashoffset={AROUND}
            transform="rotate(-90 36 36)"
          />
        )}
        <path class="stage-leave-cross" d="M27 27 45 45M45 27 27 45" />
      </svg>
      <span>{held ? STAGE_SCREENS.show.keepHolding : STAGE_SCREENS.show.holdToLeave}</span>
    </button>
  )
}
