import { LIBRARY_OPEN } from '../../shared/words/en/library-open'
import { HOME, NameForm, useApp, wayFromHere } from '../common'

/** Names a new library and opens it. */
export function NewLibrary({ onCancel }: { onCancel: () => void }) {
  const { library } = useApp()
  const create = async (name: string) => {
    const lead = wayFromHere()
    const created = await library.create(name)
    if (created.ok) {
      onCancel()
      lead(HOME)
    }
    return created
  }
  return (
    <NameForm
      label={LIBRARY_OPEN.name}
      action={LIBRARY_OPEN.create}
      hint={LIBRARY_OPEN.nameHint}
      submit={create}
      onCancel={onCancel}
    />
  )
}
