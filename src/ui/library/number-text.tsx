import { useState } from 'preact/hooks'
import { CSV_IMPORT } from '../../shared/words/en/csv-import'
import { TextField } from '../common'

export interface NumberTextProps {
  label: string
  value: number
  onChange: (value: number) => void
}

/** A positive number as typed; what is no number is not passed on, and said so. */
export function NumberText({ label, value, onChange }: NumberTextProps) {
  const [text, setText] = useState(String(value))
  const number = Number(text.replace(',', '.'))
  const wrong = !(number > 0)
  return (
    <TextField
      label={label}
      value={text}
      inputMode="decimal"
      wrong={wrong}
      {...(wrong ? { hint: CSV_IMPORT.numberAbove0 } : {})}
      onInput={(next) => {
        setText(next)
        const typed = Number(next.replace(',', '.'))
        if (typed > 0) onChange(typed)
      }}
    />
  )
}
