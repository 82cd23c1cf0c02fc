import { effect } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { RECORD } from '../../shared/words/en/record'
import { useApp } from '../common'
import { drawTrace } from './draw-trace'

/** The last seconds of motion, drawn as they come. */
export function LiveTrace() {
  const { trace } = useApp().record
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const element = canvas.current
    if (element === null) return
    let frame = 0
    const draw = () => {
      frame = 0
      drawTrace(element, trace.peek())
    }
    const stop = effect(() => {
      void trace.value
      if (frame === 0) frame = requestAnimationFrame(draw)
    })
    const observer = new ResizeObserver(draw)
    observer.observe(element)
    return () => {
      stop()
      observer.disconnect()
      cancelAnimationFrame(frame)
    }
  }, [trace])
  return <canvas ref={canvas} class="live-trace" role="img" aria-label={RECORD.traceDescribed} />
}
