import './light.css'
import type { Library } from '../../shared/model/library'
import { LIGHT_ANSWERS } from '../../shared/words/en/light-answers'
import { NextStep, Screen, useApp } from '../common'
import { CellsScreen } from './cells-screen'
import { EffectScreen } from './effect-screen'
import { LedScreen } from './led-screen'
import { LightOverview } from './overview'
import { Preview } from './preview'

/** Light, LED and cells of the open library. */
export function Light({ rest }: { rest: string[] }) {
  const library = useApp().library.current.value
  if (library !== null)
    return <Place key={`${library.id} ${rest.join(' ')}`} library={library} rest={rest} />
  return (
    <Screen title={LIGHT_ANSWERS.title}>
      <NextStep text={LIGHT_ANSWERS.noLibrary} action={LIGHT_ANSWERS.toMoves} href="#/moves" />
    </Screen>
  )
}

function Place({ library, rest: [key, what] }: { library: Library; rest: string[] }) {
  if (key === undefined) return <LightOverview library={library} />
  if (key === 'led') return <LedScreen library={library} />
  if (key === 'cells') return <CellsScreen library={library} />
  return what === 'preview' ? (
    <Preview library={library} answerKey={key} />
  ) : (
    <EffectScreen library={library} answerKey={key} />
  )
}
