import './light.css'
import { useEffect, useMemo, useRef } from 'preact/hooks'
import { answersInOrder, effectNumber, lightTable } from '../../shared/light/library-light'
import type { LightPlayer } from '../../shared/light/player'
import { mayShowLive } from '../../shared/light/show-live'
import { REJECT, REST } from '../../shared/light/table'
import type { Library } from '../../shared/model/library'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import { preferences } from '../../state/preferences'
import { useApp } from '../common'
import { playTune, playVibration } from './play-steps'
import { shineEachFrame } from './shine'
import { usePlayer } from './use-player'

/** The prop's answer while live: its light as a bar, its tune and its vibration. */
export function LiveLight({ model }: { model: RecogniserModel }) {
  const library = useApp().library.current.value
  const player = usePlayer()
  const mayShow = useMemo(
    () => player !== null && library !== null && mayShowLive(player, library),
    [player, library],
  )
  if (player === null || library === null) return <div class="live-light" aria-hidden="true" />
  if (mayShow) return <Bar model={model} library={library} player={player} />
  return (
    <p class="small quiet">
      The light is not shown here: it is over three flashes a second. Mend it on Prop, Light.
    </p>
  )
}

function Bar(props: { model: RecogniserModel; library: Library; player: LightPlayer }) {
  const { model, library, player } = props
  const app = useApp()
  const bar = useRef<HTMLDivElement>(null)
  const newest = app.live.events.value[0]
  useEffect(() => {
    player.load(lightTable(library))
    player.ticks(65_000, 1)
    return shineEachFrame(player, library, 1, (css) => {
      if (bar.current !== null) bar.current.style.backgroundColor = css
    })
  }, [player, library])
  useEffect(() => {
    if (newest === undefined) return
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
  return <div class="live-light" ref={bar} role="img" aria-label="Light of the prop" />
}
