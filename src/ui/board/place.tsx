import { useEffect, useState } from 'preact/hooks'
import type { BoardState } from '../../state/board'
import { useApp } from '../common'
import { BoardScreen } from './board-screen'
import { CalibrationScreen } from './calibration-screen'
import { DecisionScreen } from './decision-screen'
import { MountingScreen } from './mounting-screen'
import { BoardContext } from './use-board'

/** '#/board' is the check; what its logs are good for next stands behind it. */
export function BoardPlace({ rest: [what] }: { rest: string[] }) {
  const app = useApp()
  const [board, setBoard] = useState<BoardState | null>(null)
  useEffect(() => {
    void app.openBoard().then(setBoard)
  }, [app])
  if (board === null) return null
  return <BoardContext.Provider value={board}>{screenOf(what)}</BoardContext.Provider>
}

function screenOf(what: string | undefined) {
  switch (what) {
    case 'calibration':
      return <CalibrationScreen />
    case 'mounting':
      return <MountingScreen />
    case 'decision':
      return <DecisionScreen />
    default:
      return <BoardScreen />
  }
}
