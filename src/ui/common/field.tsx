import type { ComponentChildren } from 'preact'
import { useId, useLayoutEffect, useRef } from 'preact/hooks'

export interface FieldProps {
  label: string
  /** What to enter, or what is wrong with what was entered. */
  hint?: string
  wrong?: boolean
  children: (ids: { id: string; describedBy: string | undefined }) => ComponentChildren
}

/** A label, its control and a hint, tied together for screen readers. */
export function Field({ label, hint, wrong = false, children }: FieldProps) {
  const id = useId()
  const hintId = `${id}-hint`
  return (
    <div class={wrong ? 'field field-wrong' : 'field'}>
      <label for={id}>{label}</label>
      {children({ id, describedBy: hint === undefined ? undefined : hintId })}
      {hint !== undefined && (
        <span id={hintId} class="field-hint" role={wrong ? 'alert' : undefined}>
          {hint}
        </span>
      )}
    </div>
  )
}

export interface TextFieldProps {
  label: string
  value: string
  onInput: (value: string) => void
  hint?: string
  wrong?: boolean
  maxLength?: number
  /** Takes the focus when it appears: for a field that a tap has just asked for. */
  focused?: boolean
  placeholder?: string
  inputMode?: 'text' | 'numeric' | 'decimal'
}

export function TextField(props: TextFieldProps) {
  const input = useRef<HTMLInputElement>(null)
  const { focused = false } = props
  // Before the next paint: the first key after the tap must not be lost.
  useLayoutEffect(() => {
    if (focused) input.current?.focus()
  }, [focused])
  return (
    <Field
      label={props.label}
      wrong={props.wrong ?? false}
      {...(props.hint === undefined ? {} : { hint: props.hint })}
    >
      {({ id, describedBy }) => (
        <input
          id={id}
          type="text"
          value={props.value}
          maxLength={props.maxLength}
          ref={input}
          placeholder={props.placeholder}
          inputMode={props.inputMode}
          autocomplete="off"
          aria-describedby={describedBy}
          aria-invalid={props.wrong}
          onInput={(event) => props.onInput(event.currentTarget.value)}
        />
      )}
    </Field>
  )
}

export interface SelectFieldProps<T extends string> {
  label: string
  value: T
  options: { value: T; text: string }[]
  onChange: (value: T) => void
  hint?: string
}

export function SelectField<T extends string>(props: SelectFieldProps<T>) {
  return (
    <Field label={props.label} {...(props.hint === undefined ? {} : { hint: props.hint })}>
      {({ id, describedBy }) => (
        <select
          id={id}
          value={props.value}
          aria-describedby={describedBy}
          onChange={(event) => {
            const chosen = props.options[event.currentTarget.selectedIndex]
            if (chosen !== undefined) props.onChange(chosen.value)
          }}
        >
          {props.options.map((option) => (
            <option key={option.value} value={option.value} selected={option.value === props.value}>
              {option.text}
            </option>
          ))}
        </select>
      )}
    </Field>
  )
}
