import type { Spread } from '../../shared/model/light'
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
      <legend class="small quiet">
        {label}, {unit}
      </legend>
      <div class="spread-fields">
        {field('min', 'least')}
        {field('typ', 'typical')}
        {field('max', 'most')}
      </div>
    </fieldset>
  )
}
