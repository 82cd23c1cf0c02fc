import { hueEmission } from '../../shared/light/colour-wheel'
import { withKind } from '../../shared/light/edit'
import { screenCss } from '../../shared/light/screen-colour'
import { LIGHT_KINDS, type LightEffect, type LightKind } from '../../shared/model/light'
import { SelectField, Slider } from '../common'
import { NumberField } from '../prop/number-field'
import { ColourFields, LevelField } from './colour-fields'
import { KeysEditor } from './keys-editor'

const KIND_WORDS: Record<LightKind, string> = {
  off: 'No light',
  steady: 'Steady',
  breathe: 'Breathe',
  flicker: 'Flicker like a flame',
  sparkle: 'Sparkle',
  hue: 'Walk through hues',
  keys: 'Keyframes',
}

export interface EffectFieldsProps {
  effect: LightEffect
  onChange: (effect: LightEffect) => void
}

/** Kind of the effect and what that kind needs. */
export function EffectFields({ effect, onChange }: EffectFieldsProps) {
  const { kind } = effect
  return (
    <>
      <SelectField
        label="Kind"
        value={kind}
        options={LIGHT_KINDS.map((value) => ({ value, text: KIND_WORDS[value] }))}
        onChange={(next) => onChange(withKind(effect, next))}
      />
      {kind === 'keys' && <KeysEditor effect={effect} onChange={onChange} />}
      {kind === 'hue' && <HueFields effect={effect} onChange={onChange} />}
      {kind !== 'keys' && kind !== 'hue' && kind !== 'off' && (
        <>
          <Levels effect={effect} onChange={onChange} />
          <ColourFields
            colour={effect.colour}
            onChange={(colour) => onChange({ ...effect, colour })}
          />
        </>
      )}
      {kind !== 'keys' && kind !== 'off' && <PeriodField effect={effect} onChange={onChange} />}
    </>
  )
}

function Levels({ effect, onChange }: EffectFieldsProps) {
  const { kind, low, high, colour } = effect
  return (
    <>
      <LevelField
        label={kind === 'steady' ? 'Brightness' : 'Brightest'}
        level={high}
        colour={colour}
        onChange={(level) => onChange({ ...effect, high: level, low: Math.min(low, level) })}
      />
      {kind !== 'steady' && (
        <LevelField
          label="Dimmest"
          level={low}
          colour={colour}
          onChange={(level) => onChange({ ...effect, low: level, high: Math.max(high, level) })}
        />
      )}
    </>
  )
}

function HueFields({ effect, onChange }: EffectFieldsProps) {
  const wheel = Array.from({ length: 13 }, (_, i) => {
    const [red, green, blue] = hueEmission(i / 12)
    return screenCss([red / 255, green / 255, blue / 255])
  })
  const walk = Math.round(((effect.turn + 1) / 256) * 360)
  return (
    <>
      <LevelField
        label="Brightness"
        level={effect.high}
        colour={hueEmission(effect.hue / 256)}
        onChange={(high) => onChange({ ...effect, high, low: 0 })}
      />
      <Slider
        label="First hue"
        value={effect.hue}
        min={0}
        max={255}
        text={`${Math.round((effect.hue / 256) * 360)}°`}
        track={`linear-gradient(90deg, ${wheel.join(', ')})`}
        onInput={(hue) => onChange({ ...effect, hue })}
      />
      <Slider
        label="Walks"
        value={effect.turn}
        min={10}
        max={255}
        text={effect.turn === 255 ? 'all the way round' : `${walk}° and back`}
        onInput={(turn) => onChange({ ...effect, turn })}
      />
    </>
  )
}

const PERIOD_WORDS: Partial<Record<LightKind, string>> = {
  steady: 'Stays for',
  breathe: 'One breath takes',
  flicker: 'One wave of the flame takes',
  sparkle: 'One sparkle in',
  hue: 'One walk takes',
}

function PeriodField({ effect, onChange }: EffectFieldsProps) {
  return (
    <NumberField
      label={PERIOD_WORDS[effect.kind] ?? 'Round'}
      unit="ms"
      value={effect.periodMs}
      min={20}
      max={65_535}
      whole
      onChange={(periodMs) => onChange({ ...effect, periodMs })}
    />
  )
}
