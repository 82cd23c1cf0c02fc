import { HOME, NameForm, navigate, useApp } from '../common'

/** Names a new library and opens it. */
export function NewLibrary({ onCancel }: { onCancel: () => void }) {
  const { library } = useApp()
  const create = async (name: string) => {
    const created = await library.create(name)
    if (created.ok) {
      onCancel()
      navigate(HOME)
    }
    return created
  }
  return (
    <NameForm
      label="Name of the library"
      action="Create"
      hint="Such as the prop it is for."
      submit={create}
      onCancel={onCancel}
    />
  )
}
