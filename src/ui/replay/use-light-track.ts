import { useMemo } from 'preact/hooks'
import { lightTrack } from '../../shared/light/light-track'
import { mayShowLive } from '../../shared/light/show-live'
import type { Library } from '../../shared/model/library'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import type { Replay } from '../../shared/model/replay'
import { usePlayer } from '../light/use-player'

export interface LightTrack {
  /** Colour at each sample; empty while it is not known, or where it may not be shown. */
  colours: string[]
  /** Whether it is left out because it flashes too often. */
  tooFast: boolean
}

/** The light over a replay, left out where it is over three flashes a second. */
export function useLightTrack(
  library: Library,
  model: RecogniserModel,
  replay: Replay,
): LightTrack {
  const player = usePlayer()
  return useMemo(() => {
    if (player === null) return { colours: [], tooFast: false }
    if (!mayShowLive(player, library)) return { colours: [], tooFast: true }
    return { colours: lightTrack(player, library, model, replay), tooFast: false }
  }, [player, library, model, replay])
}
