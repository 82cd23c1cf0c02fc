import { MATCHER_WISHES, type TrainingSettings } from '../../shared/model/library'
import { MATCHER_WORDS } from '../../shared/words/en/matcher-words'
import { PROP } from '../../shared/words/en/prop'
import { Choice } from '../common'
import { NumberField } from './number-field'

export interface TrainingFormProps {
  settings: TrainingSettings
  onChange: (settings: TrainingSettings) => void
}

/** Choices that training follows, each with its effect. */
export function TrainingForm({ settings, onChange }: TrainingFormProps) {
  return (
    <>
      <Choice
        legend={PROP.comparedBy}
        value={settings.matcher ?? 'template'}
        options={MATCHER_WISHES.map((value) => ({ value, text: MATCHER_WORDS[value].name }))}
        onChange={(matcher) => onChange({ ...settings, matcher })}
      />
      <p class="small quiet">{MATCHER_WORDS[settings.matcher ?? 'template'].sentence}</p>
      <Choice
        legend={PROP.cutBy}
        value={settings.segmentation}
        options={[
          { value: 'motion', text: PROP.motion },
          { value: 'button', text: PROP.aButton },
        ]}
        onChange={(segmentation) => onChange({ ...settings, segmentation })}
      />
      <Choice
        legend={PROP.grip}
        value={settings.rollAlign ? 'on' : 'off'}
        options={[
          { value: 'on', text: PROP.anyRoll },
          { value: 'off', text: PROP.heldOneWay },
        ]}
        onChange={(choice) => onChange({ ...settings, rollAlign: choice === 'on' })}
      />
      <TrainingNumbers settings={settings} onChange={onChange} />
    </>
  )
}

function TrainingNumbers({ settings, onChange }: TrainingFormProps) {
  return (
    <>
      <NumberField
        label={PROP.thresholdFactor}
        value={settings.thresholdFactor}
        min={0.5}
        max={2}
        hint={PROP.thresholdHint}
        onChange={(thresholdFactor) => onChange({ ...settings, thresholdFactor })}
      />
      <div class="prop-pair">
        <NumberField
          label={PROP.templates}
          value={settings.templatesPerGesture}
          min={1}
          max={16}
          whole
          hint={PROP.templatesHint}
          onChange={(templatesPerGesture) => onChange({ ...settings, templatesPerGesture })}
        />
        <NumberField
          label={PROP.points}
          value={settings.length}
          min={8}
          max={128}
          whole
          hint={PROP.pointsHint}
          onChange={(length) => onChange({ ...settings, length })}
        />
      </div>
      <NumberField
        label={PROP.warpingBand}
        unit={PROP.bandUnit}
        value={settings.bandShare}
        min={0}
        max={1}
        hint={PROP.bandHint}
        onChange={(bandShare) => onChange({ ...settings, bandShare })}
      />
    </>
  )
}
