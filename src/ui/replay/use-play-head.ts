import { useEffect, useMemo } from 'preact/hooks'
import type { Replay } from '../../shared/model/replay'
import type { Span } from '../charts'
import { actOn, PlayHead } from './play-head'

/** A play head that runs with the screen's frames; where motion is reduced it waits for the hand. */
export function usePlayHead(replay: Replay, span: Span): PlayHead {
  const head = useMemo(() => new PlayHead(replay.rateHz, span), [replay])
  useEffect(() => {
    if (!matchMedia('(prefers-reduced-motion: reduce)').matches) head.playing.value = true
    return runWithFrames(head)
  }, [head])
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.altKey || event.ctrlKey || event.metaKey || takesKey(event)) return
      const act = actOn(head, event.key, event.shiftKey)
      if (act === null) return
      event.preventDefault()
      act()
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [head])
  return head
}

/** Calls for frames only while it plays. */
function runWithFrames(head: PlayHead): () => void {
  let frame = 0
  const stop = head.playing.subscribe((playing) => {
    cancelAnimationFrame(frame)
    if (!playing) return
    let before = performance.now()
    const next = (now: number) => {
      head.advance(now - before)
      before = now
      if (head.playing.peek()) frame = requestAnimationFrame(next)
    }
    frame = requestAnimationFrame(next)
  })
  return () => {
    stop()
    cancelAnimationFrame(frame)
  }
}

/** Whether the control that has the focus has its own use for the key. */
export function takesKey({ target, key }: KeyboardEvent): boolean {
  if (!(target instanceof Element)) return false
  if (target.matches('input[type="range"]')) return /^(Arrow|Page|Home|End)/.test(key)
  if (target.closest('select, textarea, input') !== null) return true
  return target.closest('button, a, summary') !== null && (key === ' ' || key === 'Enter')
}
