import './light.css'
import { useMemo, useRef } from 'preact/hooks'
import type { LightPlayer } from '../../shared/light/player'
import { mayShowLive } from '../../shared/light/show-live'
import type { Library } from '../../shared/model/library'
import type { RecogniserModel } from '../../shared/model/recogniser-model'
import { LIGHT_ANSWERS } from '../../shared/words/en/light-answers'
import { useApp } from '../common'
import { useLiveLamp } from './use-live-lamp'
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
  return <p class="small quiet">{LIGHT_ANSWERS.lamp.notShown}</p>
}

function Bar(props: { model: RecogniserModel; library: Library; player: LightPlayer }) {
  const { model, library, player } = props
  const bar = useRef<HTMLDivElement>(null)
  useLiveLamp(model, library, player, (css) => {
    if (bar.current !== null) bar.current.style.backgroundColor = css
  })
  return <div class="live-light" ref={bar} role="img" aria-label={LIGHT_ANSWERS.lamp.lightOfProp} />
}
