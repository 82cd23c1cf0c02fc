import { useEffect, useMemo, useRef } from 'preact/hooks'
import type { LightPlayer } from '../../shared/light/player'
import { mayShowLive } from '../../shared/light/show-live'
import type { Library } from '../../shared/model/library'
import { STAGE_SCREENS } from '../../shared/words/en/stage-screens'
import { showLine } from '../../shared/words/en/stage-words'
import type { StageState } from '../../state/stage'
import { holdHere, Mark, Progress, useApp, useWakeLock } from '../common'
import { useLiveLamp } from '../light/use-live-lamp'
import { usePlayer } from '../light/use-player'
import { PressButton } from '../try/press-button'
import { AnswerName } from './answer-name'
import { Controls } from './controls'
import type { StageOptions } from './index'
import { useShownFor } from './use-shown-for'
import { useTouches } from './use-touches'
import { useWholeScreen } from './use-whole-screen'
import { VisitorCard } from './visitor-card'

const CONTROLS_SHOWN_MS = 6000

export interface ShowScreenProps {
  stage: StageState
  options: StageOptions
  onOptions: (options: StageOptions) => void
}

/** The light itself. Nothing leaves it but a held ring or Escape. */
export function ShowScreen({ stage, options, onOptions }: ShowScreenProps) {
  const app = useApp()
  const library = app.library.current.value
  const player = usePlayer()
  const [touched, wake] = useShownFor(CONTROLS_SHOWN_MS)
  const takeScreen = useWholeScreen()
  useWakeLock(true)
  useEffect(() => holdHere(wake), [])
  useTouches(
    () => {
      wake()
      takeScreen()
    },
    () => stage.leave(),
  )
  const mayShow = useMemo(
    () => player !== null && library !== null && mayShowLive(player, library),
    [player, library],
  )
  return (
    <div class="stage">
      {mayShow && player !== null && library !== null && (
        <Light library={library} player={player} />
      )}
      <Line stage={stage} dark={player !== null && !mayShow} />
      <Words stage={stage} names={options.names} />
      <Press />
      {touched && <Controls stage={stage} options={options} onOptions={onOptions} />}
    </div>
  )
}

function Light({ library, player }: { library: Library; player: LightPlayer }) {
  const job = useApp().model.value
  const surface = useRef<HTMLDivElement>(null)
  useLiveLamp(job.state === 'done' ? job.value.model : null, library, player, (css) => {
    if (surface.current !== null) surface.current.style.backgroundColor = css
  })
  return (
    <>
      <div class="stage-light" ref={surface} aria-hidden="true" />
      <div class="stage-folds" aria-hidden="true" />
    </>
  )
}

/** A prop with a button is pressed here; a touch of it also brings the controls up. */
function Press() {
  const job = useApp().model.value
  if (job.state !== 'done' || !job.value.model.button) return null
  return (
    <div class="stage-press">
      <PressButton />
    </div>
  )
}

/** One small line when something is to be said. */
function Line({ stage, dark }: { stage: StageState; dark: boolean }) {
  const simulated = useApp().motion.kind.value === 'simulated'
  const text = showLine(stage.show.value)
  return (
    <div class="stage-top">
      {simulated && <Mark kind="simulated" />}
      <p class="stage-line" role="status">
        {text}
        {dark && ` ${STAGE_SCREENS.show.dark}`}
      </p>
    </div>
  )
}

function Words({ stage, names }: { stage: StageState; names: boolean }) {
  const job = useApp().model.value
  const turn = stage.turn.value
  if (stage.show.value.phase === 'starting') {
    return job.state === 'running' ? (
      <div class="stage-plate">
        <Progress progress={job.progress} cancel={job.cancel} />
      </div>
    ) : null
  }
  if (turn !== null) return <VisitorCard stage={stage} turn={turn} />
  return names ? <AnswerName /> : null
}
