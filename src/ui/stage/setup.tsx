import { useState } from 'preact/hooks'
import { STAGE_SCREENS } from '../../shared/words/en/stage-screens'
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
        limit={STAGE_SCREENS.setup.notShown}
        action={STAGE_SCREENS.setup.begin}
        onAccept={() => {
          app.light.acceptWarning()
          begin(asking)
        }}
        onBack={() => setAsking(null)}
      />
    )
  }
  return (
    <Screen title={STAGE_SCREENS.title} back="#/try" foot={<BeginButtons ask={ask} />}>
      <Refusal stage={stage} />
      <p>{STAGE_SCREENS.setup.about}</p>
      <Choice
        legend={STAGE_SCREENS.setup.inLight}
        value={options.names ? 'names' : 'light'}
        options={[
          { value: 'names', text: STAGE_SCREENS.setup.gestureName },
          { value: 'light', text: STAGE_SCREENS.setup.nothing },
        ]}
        onChange={(value) => onOptions({ ...options, names: value === 'names' })}
      />
      <Choice
        legend={STAGE_SCREENS.setup.visitors}
        value={options.cards ? 'cards' : 'free'}
        options={[
          { value: 'free', text: STAGE_SCREENS.setup.anyMovement },
          { value: 'cards', text: STAGE_SCREENS.setup.cards },
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
        {simulated ? STAGE_SCREENS.setup.beginSimulated : STAGE_SCREENS.setup.begin}
      </Button>
      <Button tone="quiet" wide onClick={() => ask(simulated ? 'phone' : 'simulated')}>
        {simulated ? STAGE_SCREENS.setup.usePhone : STAGE_SCREENS.setup.useSimulated}
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
      <p>{words === null ? show.why : STAGE_SCREENS.setup.refused(words)}</p>
    </Notice>
  )
}
