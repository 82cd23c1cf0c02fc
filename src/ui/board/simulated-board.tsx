import { useState } from 'preact/hooks'
import { FAULTS } from '../../shared/board/simulate/faults'
import { Button, SelectField } from '../common'
import { useBoard } from './use-board'

const SOUND = 'none'

/** A board of the demo's physics with a fault of one's choice, to see what would be said. */
export function SimulatedBoard() {
  const { bench } = useBoard()
  const [fault, setFault] = useState(SOUND)
  return (
    <>
      <p class="quiet">
        Nothing here was measured: rest, faces, turns and shake are computed, with the noise and the
        offsets that data sheets allow.
      </p>
      <SelectField
        label="Fault"
        value={fault}
        options={[
          { value: SOUND, text: 'none: a sound board' },
          ...FAULTS.map(({ name }) => ({ value: name, text: name })),
        ]}
        onChange={setFault}
      />
      <Button wide onClick={() => bench.simulate(fault === SOUND ? null : fault)}>
        Log the simulated board
      </Button>
    </>
  )
}
