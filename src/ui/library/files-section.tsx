import { useState } from 'preact/hooks'
import type { Result } from '../../shared/model/result'
import { Button, Notice, Section, useApp } from '../common'
import { type OutFile, saveFile } from '../common/save-file'
import { OpenLibraryFile } from './open-library-file'

/** Files in and out: the library as a backup, the firmware, logs of other devices. */
export function FilesSection() {
  const app = useApp()
  const [making, setMaking] = useState<'library' | 'firmware' | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const give = async (what: 'library' | 'firmware', make: () => Promise<Result<OutFile>>) => {
    setMaking(what)
    const made = await make()
    const saved = made.ok ? await saveFile(made.value) : made
    setMaking(null)
    setWrong(saved.ok ? null : saved.message)
  }
  const open = app.library.current.value
  return (
    <Section title="Files">
      {open !== null && (
        <>
          <p class="quiet">
            The library file holds every raw take of {open.name}: keep one as the backup.
          </p>
          <div class="buttons">
            <Button
              disabled={making !== null}
              onClick={() => void give('library', () => app.exportLibrary())}
            >
              {making === 'library' ? 'Writing …' : 'Export library file'}
            </Button>
            <Button
              disabled={making !== null || open.gestures.length === 0}
              onClick={() => void give('firmware', () => app.exportFirmware())}
            >
              {making === 'firmware' ? 'Training and writing …' : 'Export firmware'}
            </Button>
            <Button href="#/import">Import CSV logs</Button>
          </div>
        </>
      )}
      <OpenLibraryFile />
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
    </Section>
  )
}
