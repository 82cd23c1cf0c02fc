import { useState } from 'preact/hooks'
import type { Library } from '../../shared/model/library'
import { Button, TextField, useApp } from '../common'

export function RenameLibrary({ library, onDone }: { library: Library; onDone: () => void }) {
  const app = useApp()
  const [name, setName] = useState(library.name)
  return (
    <form
      class="inline-form library-rename"
      onSubmit={(event) => {
        event.preventDefault()
        void app.library.rename(name).then(onDone)
      }}
    >
      <TextField label="New name" value={name} onInput={setName} maxLength={40} focused />
      <div class="buttons">
        <Button submit>Rename</Button>
        <Button tone="quiet" onClick={onDone}>
          Cancel
        </Button>
      </div>
    </form>
  )
}
