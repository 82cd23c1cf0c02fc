import { useState } from 'preact/hooks'
import { Button, HOME, navigate, TextField, useApp } from '../common'

/** Names a new library and opens it. */
export function NewLibrary({ onCancel }: { onCancel: () => void }) {
  const app = useApp()
  const [name, setName] = useState('')
  const [wrong, setWrong] = useState<string | null>(null)
  const create = async () => {
    const created = await app.library.create(name)
    if (!created.ok) setWrong(created.message)
    else {
      onCancel()
      navigate(HOME)
    }
  }
  return (
    <form
      class="inline-form"
      onSubmit={(event) => {
        event.preventDefault()
        void create()
      }}
    >
      <TextField
        label="Name of the library"
        value={name}
        onInput={setName}
        maxLength={60}
        wrong={wrong !== null}
        focused
        hint={wrong ?? 'Such as the prop it is for.'}
      />
      <div class="buttons">
        <Button submit>Create</Button>
        <Button tone="quiet" onClick={onCancel}>
          Cancel
        </Button>
      </div>
    </form>
  )
}
