import { MATCHER_WISHES, type TrainingSettings } from '../../shared/model/library'
import { MATCHER_WORDS } from '../../shared/words/en/matcher-words'
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
        legend="A movement is compared with"
        value={settings.matcher ?? 'template'}
        options={MATCHER_WISHES.map((value) => ({ value, text: MATCHER_WORDS[value].name }))}
        onChange={(matcher) => onChange({ ...settings, matcher })}
      />
      <p class="small quiet">{MATCHER_WORDS[settings.matcher ?? 'template'].sentence}</p>
      <Choice
        legend="A movement is cut out by"
        value={settings.segmentation}
        options={[
          { value: 'motion', text: 'Motion' },
          { value: 'button', text: 'A button' },
        ]}
        onChange={(segmentation) => onChange({ ...settings, segmentation })}
      />
      <Choice
        legend="Grip: turn samples about the long axis by gravity"
        value={settings.rollAlign ? 'on' : 'off'}
        options={[
          { value: 'on', text: 'Any roll' },
          { value: 'off', text: 'Held one way' },
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
        label="Threshold factor"
        value={settings.thresholdFactor}
        min={0.5}
        max={2}
        hint="1 as learned; smaller rejects more, larger accepts more."
        onChange={(thresholdFactor) => onChange({ ...settings, thresholdFactor })}
      />
      <div class="prop-pair">
        <NumberField
          label="Templates a gesture, at most"
          value={settings.templatesPerGesture}
          min={1}
          max={16}
          whole
          hint="More: more ways of doing it, more flash and time."
          onChange={(templatesPerGesture) => onChange({ ...settings, templatesPerGesture })}
        />
        <NumberField
          label="Points of a movement"
          value={settings.length}
          min={8}
          max={128}
          whole
          hint="Time of a decision grows with its square."
          onChange={(length) => onChange({ ...settings, length })}
        />
      </div>
      <NumberField
        label="Warping band"
        unit="share of the points"
        value={settings.bandShare}
        min={0}
        max={1}
        hint="How far timing may shift: 0 not at all, 0.125 by an eighth of the movement."
        onChange={(bandShare) => onChange({ ...settings, bandShare })}
      />
    </>
  )
}
