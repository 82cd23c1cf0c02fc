import { lightOf } from '../../shared/light/library-light'
import type { LightPlayer } from '../../shared/light/player'
import { screenCss } from '../../shared/light/screen-colour'
import type { Library } from '../../shared/model/library'

/** A page that was hidden goes on from where it was, not with a jump. */
const LONGEST_TICK_MS = 100

/**
 * Lets the board's player go on with each frame and gives the colour, in steps of the board's timer.
 * @param pace speed, 1 as on the board
 * @returns the way to stop
 */
export function shineEachFrame(
  player: LightPlayer,
  library: Library,
  pace: number,
  show: (css: string) => void,
): () => void {
  const { pwmBits } = lightOf(library).led
  const top = 2 ** pwmBits - 1
  let before = performance.now()
  let owedMs = 0
  let frame = 0
  const paint = (now: number) => {
    owedMs += Math.min(LONGEST_TICK_MS, Math.max(0, now - before)) * pace
    before = now
    const wholeMs = Math.floor(owedMs)
    owedMs -= wholeMs
    const duty = player.ticks(wholeMs, 1)
    const share = (channel: number) => player.pwm(duty[channel] ?? 0, pwmBits) / top
    show(screenCss([share(0), share(1), share(2)]))
    frame = requestAnimationFrame(paint)
  }
  frame = requestAnimationFrame(paint)
  return () => cancelAnimationFrame(frame)
}
