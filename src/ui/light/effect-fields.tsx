import { hueEmission } from '../../shared/light/colour-wheel'
import { withKind } from '../../shared/light/edit'
import { screenCss } from '../../shared/light/screen-colour'
import { LIGHT_KINDS, type LightEffect } from '../../shared/model/light'
import { LIGHT_EFFECT } from '../../shared/words/en/light-effect'
import { SelectField, Slider } from '../common'
import { NumberField } from '../prop/number-field'
import { ColourFields, LevelField } from './colour-fields'
import { KeysEditor } from './keys-editor'

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
        label={LIGHT_EFFECT.kind.label}
        value={kind}
        options={LIGHT_KINDS.map((value) => ({ value, text: LIGHT_EFFECT.kind.names[value] }))}
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
        label={kind === 'steady' ? LIGHT_EFFECT.kind.brightness : LIGHT_EFFECT.kind.brightest}
        level={high}
        colour={colour}
        onChange={(level) => onChange({ ...effect, high: level, low: Math.min(low, level) })}
      />
      {kind !== 'steady' && (
        <LevelField
          label={LIGHT_EFFECT.kind.dimmest}
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
        label={LIGHT_EFFECT.kind.brightness}
        level={effect.high}
        colour={hueEmission(effect.hue / 256)}
        onChange={(high) => onChange({ ...effect, high, low: 0 })}
      />
      <Slider
        label={LIGHT_EFFECT.kind.firstHue}
        value={effect.hue}
        min={0}
        max={255}
        text={`${Math.round((effect.hue / 256) * 360)}°`}
        track={`linear-gradient(90deg, ${wheel.join(', ')})`}
        onInput={(hue) => onChange({ ...effect, hue })}
      />
      <Slider
        label={LIGHT_EFFECT.kind.walks}
        value={effect.turn}
        min={10}
        max={255}
        text={effect.turn === 255 ? LIGHT_EFFECT.kind.allTheWay : LIGHT_EFFECT.kind.andBack(walk)}
        onInput={(turn) => onChange({ ...effect, turn })}
      />
    </>
  )
}

function PeriodField({ effect, onChange }: EffectFieldsProps) {
  return (
    <NumberField
      label={LIGHT_EFFECT.kind.periods[effect.kind] ?? LIGHT_EFFECT.kind.round}
      unit="ms"
      value={effect.periodMs}
      min={20}
      max={65_535}
      whole
      onChange={(periodMs) => onChange({ ...effect, periodMs })}
    />
  )
}
