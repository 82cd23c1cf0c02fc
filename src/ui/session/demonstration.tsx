import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Demonstration as Shown } from '../../shared/collect/plan'
import { between, type PropFrame, propFrames, viewBoxOf } from '../../shared/collect/prop-frames'
import { SESSION_JOIN } from '../../shared/words/en/session-join'
import { Button } from '../common'

/** How long the prop rests before it is shown again, ms. */
const PAUSE_MS = 1200
/** Room around the picture, for lantern and lines, metres. */
const MARGIN_M = 0.08

export interface DemonstrationProps {
  name: string
  shown: Shown
}

/** One of the designer's takes as a moving prop, over and over; once on request with reduced motion. */
export function Demonstration({ name, shown }: DemonstrationProps) {
  const frames = useMemo(() => propFrames(shown), [shown])
  const calm = useMemo(() => matchMedia('(prefers-reduced-motion: reduce)').matches, [])
  const [plays, setPlays] = useState(calm ? 0 : Number.POSITIVE_INFINITY)
  const prop = useRef<SVGGElement>(null)
  useEffect(() => {
    if (plays === 0) return
    const lengthMs = (frames.length - 1) * shown.periodMs
    const start = performance.now()
    let handle = requestAnimationFrame(function draw(nowMs) {
      const round = (nowMs - start) / (lengthMs + PAUSE_MS)
      const atMs = Math.max(0, (nowMs - start) % (lengthMs + PAUSE_MS))
      move(prop.current, frameAt(frames, Math.min(atMs, lengthMs) / shown.periodMs))
      if (round < plays) handle = requestAnimationFrame(draw)
    })
    return () => cancelAnimationFrame(handle)
  }, [frames, plays, shown])
  const [first] = frames
  if (first === undefined) return null
  const { left, top, side } = viewBoxOf(frames, MARGIN_M)
  return (
    <figure class="demonstration">
      <svg
        viewBox={`${left} ${top} ${side} ${side}`}
        role="img"
        aria-label={SESSION_JOIN.demonstration.label(name)}
      >
        <polyline
          class="demonstration-path"
          points={frames.map(({ tip }) => tip.join(',')).join(' ')}
        />
        <g ref={prop}>
          <line class="demonstration-handle" {...lineOf(first.tail, first.tip)} />
          <line class="demonstration-mark" {...lineOf(first.fist, first.mark)} />
          <circle class="demonstration-tip" r="0.05" cx={first.tip[0]} cy={first.tip[1]} />
          <circle class="demonstration-hand" r="0.028" cx={first.fist[0]} cy={first.fist[1]} />
        </g>
      </svg>
      {calm && (
        <Button onClick={() => setPlays(plays === 1 ? 0.999 : 1)}>
          {SESSION_JOIN.demonstration.show}
        </Button>
      )}
    </figure>
  )
}

function frameAt(frames: PropFrame[], at: number): PropFrame {
  const index = Math.min(Math.floor(at), frames.length - 1)
  const from = frames[index]!
  return between(from, frames[index + 1] ?? from, at - index)
}

/** Sixty times a second: past preact, straight into the picture. */
function move(prop: SVGGElement | null, frame: PropFrame): void {
  const [handle, mark, tip, fist] = prop?.children ?? []
  put(handle, lineOf(frame.tail, frame.tip))
  put(mark, lineOf(frame.fist, frame.mark))
  put(tip, { cx: frame.tip[0], cy: frame.tip[1] })
  put(fist, { cx: frame.fist[0], cy: frame.fist[1] })
}

function put(element: Element | undefined, attributes: Record<string, number>): void {
  for (const [name, value] of Object.entries(attributes)) {
    element?.setAttribute(name, value.toFixed(4))
  }
}

function lineOf(from: readonly [number, number], to: readonly [number, number]) {
  return { x1: from[0], y1: from[1], x2: to[0], y2: to[1] }
}
