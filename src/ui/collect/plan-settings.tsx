import type { Plan, PlanHand } from '../../shared/collect/plan'
import { COLLECT_PLANS } from '../../shared/words/en/collect-plans'
import type { CollectState } from '../../state/collect'
import { Choice, SelectField } from '../common'

/** With `folder` undefined it is taken out. */
export type PlanChange = Partial<Omit<Plan, 'folder'>> & { folder?: string | undefined }

interface Props {
  collect: CollectState
  plan: Plan
  onChange: (change: PlanChange) => void
}

const HANDS: readonly PlanHand[] = ['own', 'left', 'right', 'both']

/** Order, hand, grip, rests and background. */
export function PlanSettings({ collect, plan, onChange }: Props) {
  return (
    <>
      <Choice
        legend={COLLECT_PLANS.settings.order}
        value={plan.order}
        options={[
          { value: 'shuffled', text: COLLECT_PLANS.settings.shuffled },
          { value: 'blocked', text: COLLECT_PLANS.settings.blocked },
        ]}
        onChange={(order) => onChange({ order })}
      />
      <p class="quiet small">{COLLECT_PLANS.settings.orderHint}</p>
      <Choice
        legend={COLLECT_PLANS.settings.grip}
        value={plan.grip}
        options={[
          { value: 'free', text: COLLECT_PLANS.settings.freeGrip },
          { value: 'marked', text: COLLECT_PLANS.settings.markedGrip },
        ]}
        onChange={(grip) => onChange({ grip })}
      />
      <SelectField
        label={COLLECT_PLANS.settings.hand}
        value={plan.hand}
        options={HANDS.map((value) => ({ value, text: COLLECT_PLANS.settings.hands[value] }))}
        onChange={(hand) => onChange({ hand })}
      />
      <NumberChoice
        label={COLLECT_PLANS.settings.restAfter}
        value={plan.restEvery}
        values={[0, 5, 8, 10, 15, 20]}
        text={COLLECT_PLANS.settings.restEvery}
        onChange={(restEvery) => onChange({ restEvery })}
      />
      {plan.restEvery > 0 && (
        <NumberChoice
          label={COLLECT_PLANS.settings.restLength}
          value={plan.restMs}
          values={[10_000, 20_000, 30_000, 60_000]}
          text={COLLECT_PLANS.settings.seconds}
          onChange={(restMs) => onChange({ restMs })}
        />
      )}
      <NumberChoice
        label={COLLECT_PLANS.settings.background}
        value={plan.backgroundMs}
        values={[0, 30_000, 60_000, 120_000, 300_000]}
        text={COLLECT_PLANS.settings.backgroundLength}
        onChange={(backgroundMs) => onChange({ backgroundMs })}
      />
      <FolderChoice collect={collect} plan={plan} onChange={onChange} />
    </>
  )
}

/** Whether testers are offered to send their session to the shared folder, where there is one. */
function FolderChoice({ collect, plan, onChange }: Props) {
  const own = collect.folder.address.value
  const named = plan.folder ?? own
  if (named === '') return null
  return (
    <>
      <Choice
        legend={COLLECT_PLANS.settings.sending}
        value={plan.folder === undefined ? 'no' : 'yes'}
        options={[
          { value: 'no', text: COLLECT_PLANS.settings.notOffered },
          { value: 'yes', text: COLLECT_PLANS.settings.offered },
        ]}
        onChange={(value) => onChange({ folder: value === 'yes' ? named : undefined })}
      />
      <p class="quiet small">{COLLECT_PLANS.settings.sendingHint(named)}</p>
    </>
  )
}

interface NumberChoiceProps {
  label: string
  value: number
  values: readonly number[]
  text: (value: number) => string
  onChange: (value: number) => void
}

function NumberChoice({ label, value, values, text, onChange }: NumberChoiceProps) {
  const all = [...new Set([...values, value])].sort((a, b) => a - b)
  return (
    <SelectField
      label={label}
      value={String(value)}
      options={all.map((one) => ({ value: String(one), text: text(one) }))}
      onChange={(chosen) => onChange(Number(chosen))}
    />
  )
}
