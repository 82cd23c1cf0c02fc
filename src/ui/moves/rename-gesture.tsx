import type { Gesture } from '../../shared/model/library'
import { GESTURE } from '../../shared/words/en/gesture'
import { NameForm, useApp } from '../common'

export function RenameGesture({ gesture, onDone }: { gesture: Gesture; onDone: () => void }) {
  const { library } = useApp()
  const rename = async (name: string) => {
    const renamed = await library.renameGesture(gesture.id, name)
    if (renamed.ok) onDone()
    return renamed
  }
  return (
    <NameForm
      label={GESTURE.newName}
      action={GESTURE.rename}
      before={gesture.name}
      submit={rename}
      onCancel={onDone}
    />
  )
}
