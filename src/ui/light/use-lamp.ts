import type { RefObject } from 'preact'
import { useCallback, useEffect, useRef } from 'preact/hooks'
import { answersInOrder, lightOf, lightTable } from '../../shared/light/library-light'
import type { LightPlayer } from '../../shared/light/player'
import { screenCss } from '../../shared/light/screen-colour'
import { IDLE, LOW } from '../../shared/light/table'
import type { Library } from '../../shared/model/library'

/** A page that was hidden goes on from where it was, not with a jump. */
const LONGEST_TICK_MS = 100

/**
 * Plays an answer on an element's background: the board's player and its timer's steps.
 * @param pace speed, 1 as on the board
 * @returns the element's reference, and the way to begin again
 */
export function useLamp(
  player: LightPlayer,
  library: Library,
  key: string,
  pace: number,
): [RefObject<HTMLDivElement | null>, () => void] {
  const surface = useRef<HTMLDivElement>(null)
  const begin = useCallback(() => {
    const number = answersInOrder(library).findIndex((entry) => entry.key === key)
    player.load(lightTable(library))
    if (number === LOW) player.low(true)
    // Past the least time after the start, so that the answer begins at once.
    player.ticks(65_000, 1)
    if (number !== IDLE && number !== LOW) player.start(number)
  }, [player, library, key])

  useEffect(() => {
    begin()
    const { pwmBits } = lightOf(library).led
    const top = 2 ** pwmBits - 1
    let before = performance.now()
    let owedMs = 0
    let frame = 0
    const paint = (now: number) => {
      owedMs += Math.min(LONGEST_TICK_MS, now - before) * pace
      before = now
      const wholeMs = Math.floor(owedMs)
      owedMs -= wholeMs
      const duty = player.ticks(wholeMs, 1)
      const share = (channel: number) => player.pwm(duty[channel] ?? 0, pwmBits) / top
      if (surface.current !== null) {
        surface.current.style.setProperty('--lamp', screenCss([share(0), share(1), share(2)]))
      }
      frame = requestAnimationFrame(paint)
    }
    frame = requestAnimationFrame(paint)
    return () => cancelAnimationFrame(frame)
  }, [begin, player, library, pace])
  return [surface, begin]
}
