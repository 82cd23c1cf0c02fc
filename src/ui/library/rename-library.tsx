import type { Library } from '../../shared/model/library'
import { LIBRARY } from '../../shared/words/en/library'
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
        label={LIBRARY.newName}
        action={LIBRARY.rename}
        before={library.name}
        submit={rename}
        onCancel={onDone}
      />
    </div>
  )
}
