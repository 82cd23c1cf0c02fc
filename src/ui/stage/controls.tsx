import { totalHits } from '../../shared/stage/tally'
import { STAGE_SCREENS } from '../../shared/words/en/stage-screens'
import type { StageState } from '../../state/stage'
import { Button, useApp } from '../common'
import { performPressed } from '../record/simulated-phone'
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
  const { live, model, motion } = useApp()
  const job = model.value
  const hasButton = job.state === 'done' && job.value.model.button
  const simulated = asSimulated(motion.source())
  return (
    <div class="stage-controls">
      <HoldToLeave onLeave={() => stage.leave()} />
      <div class="stage-foot">
        <span class="small">{STAGE_SCREENS.show.answered(totalHits(stage.tally.value))}</span>
        {stage.turn.value === null && (
          <Button
            pressed={options.names}
            onClick={() => onOptions({ ...options, names: !options.names })}
          >
            {STAGE_SCREENS.show.name}
          </Button>
        )}
        {simulated?.movements().map(({ id, name }) => (
          <Button
            key={id}
            onClick={() => {
              if (hasButton) void performPressed(simulated, id, live.press)
              else simulated.perform(id)
            }}
          >
            {name}
          </Button>
        ))}
      </div>
    </div>
  )
}
