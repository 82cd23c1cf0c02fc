import { useState } from 'preact/hooks'
import type { Library } from '../../shared/model/library'
import { LIBRARY } from '../../shared/words/en/library'
import { Button, HOME, Icon, Mark, Progress, useApp, wayFromHere } from '../common'
import { NewLibrary } from './new-library'
import { RenameLibrary } from './rename-library'

/** The libraries of this phone: open, name, delete, begin. */
export function LibrariesSection() {
  const { library } = useApp()
  const [naming, setNaming] = useState(false)
  const demo = library.demoJob.value
  const hasDemo = library.libraries.value.some((one) => one.generated)
  return (
    <section class="section" aria-label={LIBRARY.onThisPhone}>
      <ul class="libraries">
        {library.libraries.value.map((one) => (
          <LibraryRow key={one.id} library={one} open={one.id === library.current.value?.id} />
        ))}
      </ul>
      {naming ? (
        <NewLibrary onCancel={() => setNaming(false)} />
      ) : (
        <div class="buttons">
          <Button onClick={() => setNaming(true)}>
            <Icon name="plus" /> {LIBRARY.newLibrary}
          </Button>
          {!hasDemo && demo.state !== 'running' && (
            <Button onClick={() => void library.addDemo()}>{LIBRARY.loadDemo}</Button>
          )}
        </div>
      )}
      {demo.state === 'running' && <Progress progress={demo.progress} cancel={demo.cancel} />}
    </section>
  )
}

function LibraryRow({ library, open }: { library: Library; open: boolean }) {
  const app = useApp()
  const [renaming, setRenaming] = useState(false)
  const show = async () => {
    const lead = wayFromHere()
    await app.library.open(library.id)
    lead(HOME)
  }
  return (
    <li class={open ? 'library library-open' : 'library'}>
      <button type="button" class="library-name" aria-current={open} onClick={() => void show()}>
        <span>{library.name}</span>
        <span class="quiet small">
          {LIBRARY.gestureCount(library.gestures.length, open)}{' '}
          {library.generated && <Mark kind="generated" />}
        </span>
      </button>
      {open && (
        <Button
          tone="quiet"
          label={LIBRARY.renameLibrary(library.name)}
          onClick={() => setRenaming(true)}
        >
          <Icon name="pen" />
        </Button>
      )}
      <Button
        tone="quiet"
        label={LIBRARY.deleteLibrary(library.name)}
        onClick={() => void app.library.removeLibrary(library.id)}
      >
        <Icon name="bin" />
      </Button>
      {renaming && <RenameLibrary library={library} onDone={() => setRenaming(false)} />}
    </li>
  )
}
