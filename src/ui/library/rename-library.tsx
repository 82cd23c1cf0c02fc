import type { Library } from '../../shared/model/library'
import { NameForm, useApp } from '../common'

export function RenameLibrary({ library, onDone }: { library: Library; onDone: () => void }) {
  const app = useApp()
  const rename = async (name: string) => {
    const renamed = await app.library.rename(name)
    if (renamed.ok) onDone()
    return renamed
  }
  return (
    <div class="library-rename">
      <NameForm
        label="New name"
        action="Rename"
        before={library.name}
        submit={rename}
        onCancel={onDone}
      />
    </div>
  )
}
