import './prop.css'
import { useState } from 'preact/hooks'
import { TARGET_FORMS } from '../../shared/words/en/target-forms'
import { TextField } from '../common'

export interface NumberFieldProps {
  label: string
  /** With the unit that stands behind the label. */
  unit?: string
  value: number
  min: number
  max: number
  whole?: boolean
  hint?: string
  onChange: (value: number) => void
}

/** A number with its range: taken over while it is right, kept on screen and explained while not. */
export function NumberField(props: NumberFieldProps) {
  const { label, unit, value, min, max, whole = false, hint, onChange } = props
  const [draft, setDraft] = useState<string | null>(null)
  const text = draft ?? String(value)
  const problem = draft === null ? null : problemOf(draft, min, max, whole)
  const shownHint = problem ?? hint
  return (
    <TextField
      label={unit === undefined ? label : TARGET_FORMS.withUnit(label, unit)}
      value={text}
      inputMode={whole ? 'numeric' : 'decimal'}
      wrong={problem !== null}
      {...(shownHint === undefined ? {} : { hint: shownHint })}
      onInput={(next) => {
        const fine = problemOf(next, min, max, whole) === null
        setDraft(fine && String(numberOf(next)) === next ? null : next)
        if (fine) onChange(numberOf(next))
      }}
    />
  )
}

function numberOf(text: string): number {
  return text.trim() === '' ? Number.NaN : Number(text.replace(',', '.'))
}

function problemOf(text: string, min: number, max: number, whole: boolean): string | null {
  const value = numberOf(text)
  if (Number.isFinite(value) && value >= min && value <= max && !(whole && value % 1 !== 0)) {
    return null
  }
  return TARGET_FORMS.enterFromTo(whole, min, max)
}
