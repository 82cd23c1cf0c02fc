import { useEffect, useState } from 'preact/hooks'
import type { Take } from '../../shared/model/library'
import { spread } from '../../shared/present/spread'
import { computeRibbon, type Ribbon } from '../../shared/ribbon/ribbon'
import { tipInPhone } from '../../shared/target/board'
import { useApp, useSamples } from '../common'

/** Takes drawn in one picture: enough for the spread to show. */
const TAKES_DRAWN = 16
const NONE: Ribbon = { kind: 'none' }
/** Pictures of this visit; the key holds everything that a picture depends on. */
const kept = new Map<string, Ribbon>()
const MOST_KEPT = 200

/** The ribbon of a gesture, computed when the browser is idle; null until it is there. */
export function useRibbon(gestureId: string): Ribbon | null {
  const { library } = useApp()
  const takes = spread(takesOf(gestureId, library.recordings.value), TAKES_DRAWN)
  const target = library.current.value?.target
  const tip = target === undefined ? undefined : tipInPhone(target)
  const blocks = useSamples(takes)
  const key = `${tip?.join(',')} ${takes.map((take) => take.id).join(' ')}`
  const [, redraw] = useState(0)
  const found = takes.length === 0 ? NONE : (kept.get(key) ?? null)
  const ready = found === null && blocks.length > 0
  useEffect(() => {
    if (!ready) return
    return whenIdle(() => {
      const accelSigns = takes.map((take) => take.device.accelSign)
      // Some samples may be gone from the storage; then signs and blocks no longer pair up.
      const signs = blocks.length === takes.length ? { accelSigns } : {}
      keep(key, computeRibbon(blocks, { ...signs, ...(tip === undefined ? {} : { tip }) }))
      redraw((count) => count + 1)
    })
  }, [key, ready])
  return found
}

function takesOf(gestureId: string, recordings: { kind: string }[]): Take[] {
  return (recordings as Take[]).filter(
    (recording) => recording.kind === 'take' && recording.gestureId === gestureId,
  )
}

function keep(key: string, ribbon: Ribbon): void {
  kept.set(key, ribbon)
  const oldest = kept.keys().next().value
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest)
}

/** Runs in the next idle moment, one picture at a time; soon where the browser has no such call. */
function whenIdle(work: () => void): () => void {
  if (typeof requestIdleCallback !== 'function') {
    const timer = setTimeout(work, 30)
    return () => clearTimeout(timer)
  }
  const handle = requestIdleCallback(work, { timeout: 500 })
  return () => cancelIdleCallback(handle)
}
