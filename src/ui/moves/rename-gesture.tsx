import { useState } from 'preact/hooks'
import type { Gesture } from '../../shared/model/library'
import { Button, TextField, useApp } from '../common'

export function RenameGesture({ gesture, onDone }: { gesture: Gesture; onDone: () => void }) {
  const app = useApp()
  const [name, setName] = useState(gesture.name)
  const [wrong, setWrong] = useState<string | null>(null)
  const rename = async () => {
    const renamed = await app.library.renameGesture(gesture.id, name)
    if (renamed.ok) onDone()
    else setWrong(renamed.message)
  }
  return (
    <form
      class="inline-form"
      onSubmit={(event) => {
        event.preventDefault()
        void rename()
      }}
    >
      <TextField
        label="New name"
        value={name}
        onInput={setName}
        maxLength={40}
        focused
        wrong={wrong !== null}
        {...(wrong === null ? {} : { hint: wrong })}
      />
      <div class="buttons">
        <Button submit>Rename</Button>
        <Button tone="quiet" onClick={onDone}>
          Cancel
        </Button>
      </div>
    </form>
  )
}
