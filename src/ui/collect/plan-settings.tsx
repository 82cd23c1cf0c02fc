import type { Plan, PlanHand } from '../../shared/collect/plan'
import type { CollectState } from '../../state/collect'
import { Choice, SelectField } from '../common'

/** With `folder` undefined it is taken out. */
export type PlanChange = Partial<Omit<Plan, 'folder'>> & { folder?: string | undefined }

interface Props {
  collect: CollectState
  plan: Plan
  onChange: (change: PlanChange) => void
}

const HANDS: { value: PlanHand; text: string }[] = [
  { value: 'own', text: "the tester's own" },
  { value: 'left', text: 'left' },
  { value: 'right', text: 'right' },
  { value: 'both', text: 'both, one after the other' },
]

/** Order, hand, grip, rests and background. */
export function PlanSettings({ collect, plan, onChange }: Props) {
  return (
    <>
      <Choice
        legend="Order"
        value={plan.order}
        options={[
          { value: 'shuffled', text: 'Shuffled' },
          { value: 'blocked', text: 'One gesture after the other' },
        ]}
        onChange={(order) => onChange({ order })}
      />
      <p class="quiet small">
        Shuffled takes are less alike, as at an event. One after the other is easier to follow.
      </p>
      <Choice
        legend="Grip"
        value={plan.grip}
        options={[
          { value: 'free', text: 'As they like' },
          { value: 'marked', text: 'Screen towards them' },
        ]}
        onChange={(grip) => onChange({ grip })}
      />
      <SelectField
        label="Hand"
        value={plan.hand}
        options={HANDS}
        onChange={(hand) => onChange({ hand })}
      />
      <NumberChoice
        label="A rest after"
        value={plan.restEvery}
        values={[0, 5, 8, 10, 15, 20]}
        text={(n) => (n === 0 ? 'no rests' : `${n} takes`)}
        onChange={(restEvery) => onChange({ restEvery })}
      />
      {plan.restEvery > 0 && (
        <NumberChoice
          label="Length of a rest"
          value={plan.restMs}
          values={[10_000, 20_000, 30_000, 60_000]}
          text={(ms) => `${ms / 1000}\u202fs`}
          onChange={(restMs) => onChange({ restMs })}
        />
      )}
      <NumberChoice
        label="Background at the end"
        value={plan.backgroundMs}
        values={[0, 30_000, 60_000, 120_000, 300_000]}
        text={(ms) =>
          ms === 0 ? 'none' : ms < 60_000 ? `${ms / 1000}\u202fs` : `${ms / 60_000}\u202fmin`
        }
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
        legend="Sending to the shared folder"
        value={plan.folder === undefined ? 'no' : 'yes'}
        options={[
          { value: 'no', text: 'Not offered' },
          { value: 'yes', text: 'Offered to testers' },
        ]}
        onChange={(value) => onChange({ folder: value === 'yes' ? named : undefined })}
      />
      <p class="quiet small">
        The link then holds the address {named}; a tester taps to send, and nothing goes by itself.
      </p>
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
