import { MOVES } from '../../shared/words/en/moves'
import { Button, Icon, NameForm, route, useApp, wayFromHere } from '../common'

export interface AddGestureProps {
  open: boolean
  onOpen: (open: boolean) => void
}

/** Names a new gesture and goes to record it. */
export function AddGesture({ open, onOpen }: AddGestureProps) {
  const { library } = useApp()
  const add = async (name: string) => {
    const lead = wayFromHere()
    const added = await library.addGesture(name)
    if (added.ok) {
      onOpen(false)
      lead(route('gesture', added.value.id))
    }
    return added
  }
  if (!open) {
    return (
      <Button onClick={() => onOpen(true)}>
        <Icon name="plus" /> {MOVES.addGesture}
      </Button>
    )
  }
  return (
    <NameForm
      label={MOVES.gestureName}
      action={MOVES.add}
      hint={MOVES.gestureNameHint}
      submit={add}
      onCancel={() => onOpen(false)}
    />
  )
}
