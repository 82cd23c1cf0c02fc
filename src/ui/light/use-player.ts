import { useEffect, useMemo, useState } from 'preact/hooks'
import { answersInOrder, type LightOwner, lightTable } from '../../shared/light/library-light'
import type { LightPlayer } from '../../shared/light/player'
import { type Run, runAlone } from '../../shared/light/run'
import { useApp } from '../common'

/** A player of effects for this screen; null until the core is there. */
export function usePlayer(): LightPlayer | null {
  const app = useApp()
  const [player, setPlayer] = useState<LightPlayer | null>(null)
  useEffect(() => {
    let wanted = true
    void app.light.player().then((loaded) => {
      if (wanted) setPlayer(loaded)
    })
    return () => {
      wanted = false
    }
  }, [app])
  return player
}

/** The light of an answer from its start, as the board would give it; empty until known. */
export function useRun(
  player: LightPlayer | null,
  library: LightOwner,
  key: string,
  durationMs: number,
): Run {
  return useMemo(() => {
    const number = answersInOrder(library).findIndex((entry) => entry.key === key)
    if (player === null || number < 0) return []
    return runAlone(player, lightTable(library), number, durationMs)
  }, [player, library, key, durationMs])
}
