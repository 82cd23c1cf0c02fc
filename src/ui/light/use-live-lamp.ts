import { useEffect } from 'preact/hooks'
import { answersInOrder, effectNumber, lightTable } from '../../shared/light/library-light'
import type { LightPlayer } from '../../shared/light/player'
import { REJECT, REST } from '../../shared/light/table'
import type { Library } from '../../shared/model/library'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import { preferences } from '../../state/preferences'
import { useApp } from '../common'
import { playTune, playVibration } from './play-steps'
import { shineEachFrame } from './shine'

/**
 * The prop's answers while live: light by the board's own player, tune and vibration.
 * @param model null while there is none: the light of rest
 * @param show given the light's colour each frame
 */
export function useLiveLamp(
  model: RecogniserModel | null,
  library: Library,
  player: LightPlayer,
  show: (css: string) => void,
): void {
  const app = useApp()
  const newest = app.live.events.value[0]
  useEffect(() => {
    player.load(lightTable(library))
    player.ticks(65_000, 1)
    return shineEachFrame(player, library, 1, show)
  }, [player, library])
  useEffect(() => {
    if (newest === undefined || model === null) return
    const { event } = newest
    const named = event.kind === 'gesture' && event.gesture !== null
    const id = named ? (model.gestures[event.gesture ?? 0]?.id ?? null) : null
    const number = named ? effectNumber(library, id) : REJECT
    if (number === REST) return
    player.start(number)
    const answer = answersInOrder(library)[number]?.answer
    if (answer === undefined) return
    if (preferences.peek().sound) playTune(answer.sound)
    playVibration(answer.vibration)
    // Only a new event is an occasion.
  }, [newest])
}
