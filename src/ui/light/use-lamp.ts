import type { RefObject } from 'preact'
import { useCallback, useEffect, useRef } from 'preact/hooks'
import { answersInOrder, lightTable } from '../../shared/light/library-light'
import type { LightPlayer } from '../../shared/light/player'
import { IDLE, LOW } from '../../shared/light/table'
import type { Library } from '../../shared/model/library'
import { shineEachFrame } from './shine'

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
    return shineEachFrame(player, library, pace, (css) =>
      surface.current?.style.setProperty('--lamp', css),
    )
  }, [begin, player, library, pace])
  return [surface, begin]
}
