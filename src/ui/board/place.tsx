import { BoardScreen } from './board-screen'
import { CalibrationScreen } from './calibration-screen'
import { DecisionScreen } from './decision-screen'
import { MountingScreen } from './mounting-screen'

/** '#/board' is the check; what its logs are good for next stands behind it. */
export function BoardPlace({ rest: [what] }: { rest: string[] }) {
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
