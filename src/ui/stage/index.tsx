import './stage.css'
import { useEffect, useState } from 'preact/hooks'
import { countLibrary } from '../../shared/present/library-counts'
import { STAGE_SCREENS } from '../../shared/words/en/stage-screens'
import type { StageState } from '../../state/stage'
import { NextStep, Notice, Screen, useApp } from '../common'
import { Setup } from './setup'
import { ShowScreen } from './show-screen'

/** What a show is like; chosen before it begins. */
export interface StageOptions {
  /** The gesture's name stands large in the light. */
  names: boolean
  /** Visitors are asked for one movement after the other. */
  cards: boolean
}

/** The phone as the lantern, for a dark hall. */
export function StagePlace() {
  const app = useApp()
  const [stage, setStage] = useState<StageState | null>(null)
  const [failed, setFailed] = useState(false)
  const [options, setOptions] = useState<StageOptions>({ names: true, cards: false })
  const { takes } = countLibrary(
    app.library.current.value?.gestures ?? [],
    app.library.recordings.value,
  )
  useEffect(() => {
    app.openStage().then(setStage, () => setFailed(true))
  }, [app])
  useEffect(() => () => stage?.leave(), [stage])
  if (failed) return <NotLoaded />
  if (takes === 0) return <NoTakes />
  if (stage === null) return null
  return stage.show.value.phase === 'off' ? (
    <Setup stage={stage} options={options} onOptions={setOptions} />
  ) : (
    <ShowScreen stage={stage} options={options} onOptions={setOptions} />
  )
}

function NoTakes() {
  return (
    <Screen title={STAGE_SCREENS.title} back="#/try">
      <NextStep text={STAGE_SCREENS.noTakes} action={STAGE_SCREENS.record} href="#/moves" />
    </Screen>
  )
}

function NotLoaded() {
  return (
    <Screen title={STAGE_SCREENS.title} back="#/try">
      <Notice tone="trouble" live>
        <p>{STAGE_SCREENS.notLoaded}</p>
      </Notice>
    </Screen>
  )
}
