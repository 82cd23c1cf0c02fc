import type { Gesture } from '../../shared/model/library'
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
      label="New name"
      action="Rename"
      before={gesture.name}
      submit={rename}
      onCancel={onDone}
    />
  )
}
