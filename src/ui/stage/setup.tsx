import { useState } from 'preact/hooks'
import { motionWords } from '../../state/motion-words'
import type { StageState } from '../../state/stage'
import { Button, Choice, Notice, Screen, useApp } from '../common'
import { FlashWarning } from '../light/flash-warning'
import type { StageOptions } from './index'
import { TallySection } from './tally-section'

export interface SetupProps {
  stage: StageState
  options: StageOptions
  onOptions: (options: StageOptions) => void
}

/** Before the show: what it shows, and what this evening brought so far. */
export function Setup({ stage, options, onOptions }: SetupProps) {
  const app = useApp()
  const [asking, setAsking] = useState<'phone' | 'simulated' | null>(null)
  const begin = (kind: 'phone' | 'simulated') => {
    app.motion.use(kind)
    stage.begin(options.cards)
  }
  const ask = (kind: 'phone' | 'simulated') =>
    app.light.warned.value ? begin(kind) : setAsking(kind)
  if (asking !== null) {
    return (
      <FlashWarning
        limit="Light that is over three flashes a second is not shown on the stage."
        action="Begin"
        onAccept={() => {
          app.light.acceptWarning()
          begin(asking)
        }}
        onBack={() => setAsking(null)}
      />
    )
  }
  return (
    <Screen title="Stage" back="#/try" foot={<BeginButtons ask={ask} />}>
      <Refusal stage={stage} />
      <p>
        The phone is the lantern: its light fills the screen and answers each movement. The screen
        stays on, and a stray touch does not end it.
      </p>
      <Choice
        legend="In the light"
        value={options.names ? 'names' : 'light'}
        options={[
          { value: 'names', text: 'Name of the gesture' },
          { value: 'light', text: 'Nothing' },
        ]}
        onChange={(value) => onOptions({ ...options, names: value === 'names' })}
      />
      <Choice
        legend="For visitors"
        value={options.cards ? 'cards' : 'free'}
        options={[
          { value: 'free', text: 'Any movement' },
          { value: 'cards', text: 'Cards: try this one' },
        ]}
        onChange={(value) => onOptions({ ...options, cards: value === 'cards' })}
      />
      <TallySection stage={stage} />
    </Screen>
  )
}

function BeginButtons({ ask }: { ask: (kind: 'phone' | 'simulated') => void }) {
  const simulated = useApp().motion.kind.value === 'simulated'
  return (
    <div class="foot-stack">
      <Button tone="amber" big wide onClick={() => ask(simulated ? 'simulated' : 'phone')}>
        {simulated ? 'Begin with the simulated phone' : 'Begin'}
      </Button>
      <Button tone="quiet" wide onClick={() => ask(simulated ? 'phone' : 'simulated')}>
        {simulated ? 'Use this phone’s sensors' : 'Use the simulated phone'}
      </Button>
    </div>
  )
}

/** Why the last start came to nothing. */
function Refusal({ stage }: { stage: StageState }) {
  const { motion } = useApp()
  const show = stage.show.value
  if (show.phase !== 'off' || show.why === null) return null
  const words = motionWords(motion.status.value)
  return (
    <Notice tone="trouble" live>
      <p>{words === null ? show.why : `${words.seen} ${words.todo}`}</p>
    </Notice>
  )
}
