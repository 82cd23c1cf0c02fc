import { useId } from 'preact/hooks'

export interface SliderProps {
  label: string
  value: number
  min: number
  max: number
  step?: number
  /** The value in words, with its unit. */
  text: string
  /** CSS background of the track: what the slider would give from end to end. */
  track?: string
  onInput: (value: number) => void
  /** Once, when the thumb is let go or a key has moved it. */
  onChange?: (value: number) => void
}

/** A slider as high as a thumb, with its value said beside the label. */
export function Slider(props: SliderProps) {
  const id = useId()
  return (
    <div class="slider">
      <label for={id}>
        <span>{props.label}</span>
        <output>{props.text}</output>
      </label>
      <input
        id={id}
        type="range"
        min={props.min}
        max={props.max}
        step={props.step ?? 1}
        value={props.value}
        aria-valuetext={props.text}
        {...(props.track === undefined ? {} : { style: { '--track': props.track } })}
        onInput={(event) => props.onInput(Number(event.currentTarget.value))}
        onChange={(event) => props.onChange?.(Number(event.currentTarget.value))}
      />
    </div>
  )
}
