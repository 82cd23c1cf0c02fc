import { Button, useApp } from '../common'
import { asSimulated } from '../record/simulated-source'

/** Movements of the simulated phone, to be tapped when the session says so. */
export function SimulatedMoves() {
  const source = asSimulated(useApp().motion.source())
  if (source === null) return null
  return (
    <div class="buttons">
      {source.movements().map(({ id, name }) => (
        <Button key={id} onClick={() => source.perform(id)}>
          {name}
        </Button>
      ))}
    </div>
  )
}
