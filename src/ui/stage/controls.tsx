import { totalHits } from '../../shared/stage/tally'
import { plural } from '../../shared/words/en/numbers'
import type { StageState } from '../../state/stage'
import { Button, useApp } from '../common'
import { asSimulated } from '../record/simulated-source'
import { HoldToLeave } from './hold-to-leave'
import type { StageOptions } from './index'

export interface ControlsProps {
  stage: StageState
  options: StageOptions
  onOptions: (options: StageOptions) => void
}

/** For the one who runs the show: there for a few seconds after a touch. */
export function Controls({ stage, options, onOptions }: ControlsProps) {
  const { motion } = useApp()
  const simulated = asSimulated(motion.source())
  return (
    <div class="stage-controls">
      <HoldToLeave onLeave={() => stage.leave()} />
      <div class="stage-foot">
        <span class="small">{plural('movement', totalHits(stage.tally.value))} answered</span>
        {stage.turn.value === null && (
          <Button
            pressed={options.names}
            onClick={() => onOptions({ ...options, names: !options.names })}
          >
            Name
          </Button>
        )}
        {simulated?.movements().map(({ id, name }) => (
          <Button key={id} onClick={() => simulated.perform(id)}>
            {name}
          </Button>
        ))}
      </div>
    </div>
  )
}
