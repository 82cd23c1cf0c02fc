import { useState } from 'preact/hooks'
import { Button, Icon, navigate, route, TextField, useApp } from '../common'

export interface AddGestureProps {
  open: boolean
  onOpen: (open: boolean) => void
}

/** Names a new gesture and goes to record it. */
export function AddGesture({ open, onOpen }: AddGestureProps) {
  const app = useApp()
  const [name, setName] = useState('')
  const [wrong, setWrong] = useState<string | null>(null)
  const add = async () => {
    const added = await app.library.addGesture(name)
    if (!added.ok) {
      setWrong(added.message)
      return
    }
    setName('')
    setWrong(null)
    onOpen(false)
    navigate(route('gesture', added.value.id))
  }
  if (!open) {
    return (
      <Button onClick={() => onOpen(true)}>
        <Icon name="plus" /> Add a gesture
      </Button>
    )
  }
  return (
    <form
      class="add-gesture"
      onSubmit={(event) => {
        event.preventDefault()
        void add()
      }}
    >
      <TextField
        label="Name of the gesture"
        value={name}
        onInput={setName}
        maxLength={40}
        focused
        wrong={wrong !== null}
        hint={wrong ?? 'What the hand does, such as Raise or Pour.'}
      />
      <div class="buttons">
        <Button submit>Add</Button>
        <Button tone="quiet" onClick={() => onOpen(false)}>
          Cancel
        </Button>
      </div>
    </form>
  )
}
