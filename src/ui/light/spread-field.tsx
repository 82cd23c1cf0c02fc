import type { Spread } from '../../shared/model/light'
import { LIGHT_POWER } from '../../shared/words/en/light-power'
import { NumberField } from '../prop/number-field'

interface SpreadFieldProps {
  label: string
  unit: string
  spread: Spread
  max: number
  onChange: (spread: Spread) => void
}

/** A figure that is known by its limits: least, typical, most. */
export function SpreadField({ label, unit, spread, max, onChange }: SpreadFieldProps) {
  const field = (bound: keyof Spread, word: string) => (
    <NumberField
      label={word}
      value={spread[bound]}
      min={0}
      max={max}
      onChange={(value) => onChange({ ...spread, [bound]: value })}
    />
  )
  return (
    <fieldset class="spread">
      <legend class="small quiet">{LIGHT_POWER.spread.ofUnit(label, unit)}</legend>
      <div class="spread-fields">
        {field('min', LIGHT_POWER.spread.min)}
        {field('typ', LIGHT_POWER.spread.typ)}
        {field('max', LIGHT_POWER.spread.max)}
      </div>
    </fieldset>
  )
}
