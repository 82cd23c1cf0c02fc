import './decide.css'
import { useEffect, useState } from 'preact/hooks'
import type { DecideState } from '../../state/decide'
import { useApp } from '../common'
import { DataScreen } from './data-screen'
import { GesturesScreen } from './gestures-screen'
import { Overview } from './overview'
import { PairScreen } from './pair-screen'
import { SensorScreen } from './sensor-screen'
import { DecideContext } from './use-decide'

/** '#/decide': which gestures, how much data, which sensor; each on a screen of its own. */
export function DecidePlace({ rest }: { rest: string[] }) {
  const app = useApp()
  const [decide, setDecide] = useState<DecideState | null>(null)
  useEffect(() => {
    void app.openDecide().then(setDecide)
  }, [app])
  if (decide === null) return null
  return <DecideContext.Provider value={decide}>{screenOf(rest)}</DecideContext.Provider>
}

function screenOf([what, first = '', second = '']: string[]) {
  switch (what) {
    case 'gestures':
      return <GesturesScreen />
    case 'pair':
      return <PairScreen key={`${first} ${second}`} ids={[first, second]} />
    case 'data':
      return <DataScreen />
    case 'sensor':
      return <SensorScreen />
    default:
      return <Overview />
  }
}
