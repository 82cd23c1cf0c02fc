import { TARGET_FORMS } from '../../shared/words/en/target-forms'
import { TextField } from '../common'
import { NumberField } from './number-field'
import type { TargetFormProps } from './sensor-form'

/** The microcontroller: what there is, and how much of it the model may take. */
export function BoardForm({ target, onChange }: TargetFormProps) {
  return (
    <>
      <TextField
        label={TARGET_FORMS.name}
        value={target.name}
        maxLength={60}
        wrong={target.name.trim() === ''}
        {...(target.name.trim() === '' ? { hint: TARGET_FORMS.nameMissing } : {})}
        onInput={(name) => onChange({ ...target, name })}
      />
      <div class="prop-pair">
        <NumberField
          label={TARGET_FORMS.clock}
          unit="MHz"
          value={target.clockHz / 1e6}
          min={0.1}
          max={2000}
          onChange={(mhz) => onChange({ ...target, clockHz: Math.round(mhz * 1e6) })}
        />
        <NumberField
          label={TARGET_FORMS.ram}
          unit="KiB"
          value={target.ramBytes / 1024}
          min={0.5}
          max={65_536}
          onChange={(kib) => onChange({ ...target, ramBytes: Math.round(kib * 1024) })}
        />
      </div>
      <div class="prop-pair">
        <NumberField
          label={TARGET_FORMS.flash}
          unit="KiB"
          value={target.flashBytes / 1024}
          min={4}
          max={1_048_576}
          onChange={(kib) => onChange({ ...target, flashBytes: Math.round(kib * 1024) })}
        />
        <NumberField
          label={TARGET_FORMS.modelFlash}
          unit="KiB"
          value={target.modelBudgetBytes / 1024}
          min={0.5}
          max={target.flashBytes / 1024}
          onChange={(kib) => onChange({ ...target, modelBudgetBytes: Math.round(kib * 1024) })}
        />
      </div>
    </>
  )
}
