import { useState } from 'preact/hooks'
import type { Result } from '../../shared/model/result'
import { COMMON } from '../../shared/words/en/common'
import { MAX_NAME_LENGTH } from '../../state/names'
import { Button } from './button'
import { TextField } from './field'

export interface NameFormProps {
  label: string
  /** What the button does, in a word. */
  action: string
  before?: string
  hint?: string
  /** Acts on the name. A failure is told at the field, and the form stays. */
  submit: (name: string) => Promise<Result<unknown>>
  onCancel: () => void
}

/** Asks for the name of one thing, in place. */
export function NameForm({ label, action, before = '', hint, submit, onCancel }: NameFormProps) {
  const [name, setName] = useState(before)
  const [wrong, setWrong] = useState<string | null>(null)
  const told = wrong ?? hint
  return (
    <form
      class="inline-form"
      onSubmit={(event) => {
        event.preventDefault()
        void submit(name).then((done) => setWrong(done.ok ? null : done.message))
      }}
    >
      <TextField
        label={label}
        value={name}
        onInput={setName}
        maxLength={MAX_NAME_LENGTH}
        wrong={wrong !== null}
        focused
        {...(told === undefined ? {} : { hint: told })}
      />
      <div class="buttons">
        <Button tone="amber" submit>
          {action}
        </Button>
        <Button tone="quiet" onClick={onCancel}>
          {COMMON.cancel}
        </Button>
      </div>
    </form>
  )
}
