import { useState } from 'preact/hooks'
import { FAULTS } from '../../shared/board/simulate/faults'
import { BOARD_FAULTS } from '../../shared/words/en/board-faults'
import { BOARD_LOGS } from '../../shared/words/en/board-logs'
import { Button, SelectField } from '../common'
import { useBoard } from './use-board'

const SOUND = 'none'

/** A board of the demo's physics with a fault of one's choice, to see what would be said. */
export function SimulatedBoard() {
  const { bench } = useBoard()
  const [fault, setFault] = useState(SOUND)
  return (
    <>
      <p class="quiet">{BOARD_LOGS.simulated.hint}</p>
      <SelectField
        label={BOARD_LOGS.simulated.fault}
        value={fault}
        options={[
          { value: SOUND, text: BOARD_LOGS.simulated.sound },
          ...FAULTS.map(({ name }) => ({ value: name, text: BOARD_FAULTS[name] })),
        ]}
        onChange={setFault}
      />
      <Button wide onClick={() => bench.simulate(fault === SOUND ? null : fault)}>
        {BOARD_LOGS.simulated.log}
      </Button>
    </>
  )
}
