import { useId } from 'preact/hooks'

export interface ChoiceProps<T extends string> {
  legend: string
  value: T
  options: { value: T; text: string }[]
  onChange: (value: T) => void
}

/** A few exclusive options side by side, as radio buttons. */
export function Choice<T extends string>({ legend, value, options, onChange }: ChoiceProps<T>) {
  const name = useId()
  return (
    <fieldset class="choice">
      <legend>{legend}</legend>
      <div class="choice-options">
        {options.map((option) => (
          <label key={option.value} class="choice-option">
            <input
              type="radio"
              name={name}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            <span>{option.text}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
