import { useState } from 'preact/hooks'
import { parseSteps, type StepPreset, stepsText } from '../../shared/light/steps'
import type { Step } from '../../shared/model/light'
import { LIGHT_EFFECT } from '../../shared/words/en/light-effect'
import { Button, TextField } from '../common'

interface StepsFieldProps {
  label: string
  hint: string
  /** Of a value: 20000 Hz, or 255 of a strength. */
  most: number
  steps: Step[]
  presets: readonly StepPreset[]
  onChange: (steps: Step[]) => void
  onPlay: ((steps: Step[]) => void) | null
}

/** A tune or a vibration: some to start from, and every step as text. */
export function StepsField(props: StepsFieldProps) {
  const { label, hint, most, steps, presets, onChange, onPlay } = props
  const [draft, setDraft] = useState<string | null>(null)
  const parsed = draft === null ? null : parseSteps(draft, most)
  const wrong = parsed !== null && !parsed.ok
  return (
    <>
      <TextField
        label={label}
        value={draft ?? stepsText(steps)}
        hint={wrong ? parsed.message : hint}
        wrong={wrong}
        onInput={(text) => {
          setDraft(text)
          const read = parseSteps(text, most)
          if (read.ok) onChange(read.value)
        }}
      />
      <div class="buttons">
        {presets.map(({ name, steps: preset }) => (
          <Button
            key={name}
            onClick={() => {
              setDraft(null)
              onChange(preset.map((step) => ({ ...step })))
              onPlay?.(preset)
            }}
          >
            {name}
          </Button>
        ))}
        {steps.length > 0 && onPlay !== null && (
          <Button onClick={() => onPlay(steps)}>{LIGHT_EFFECT.sound.play}</Button>
        )}
        {steps.length > 0 && (
          <Button
            tone="quiet"
            onClick={() => {
              setDraft(null)
              onChange([])
            }}
          >
            {LIGHT_EFFECT.sound.none}
          </Button>
        )}
      </div>
    </>
  )
}
