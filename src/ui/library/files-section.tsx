import { useState } from 'preact/hooks'
import type { Result } from '../../shared/model/result'
import type { Steering } from '../../state/app'
import { Button, Notice, Progress, Section, useApp } from '../common'
import { type OutFile, saveFile } from '../common/save-file'
import { useLongWork } from '../common/use-long-work'
import { OpenLibraryFile } from './open-library-file'

/** Files in and out: one library, the firmware, logs of other devices. */
export function FilesSection() {
  const app = useApp()
  const { running, run } = useLongWork()
  const [wrong, setWrong] = useState<string | null>(null)
  const give = async (
    what: string,
    make: (steering: Steering) => Promise<Result<OutFile>>,
  ): Promise<void> => {
    setWrong(null)
    const made = await run(what, make)
    const saved = made.ok ? await saveFile(made.value) : made
    const isCancelled = !saved.ok && saved.code === 'worker/aborted'
    setWrong(saved.ok || isCancelled ? null : saved.message)
  }
  const open = app.library.current.value
  return (
    <Section title="Files">
      {open !== null && (
        <>
          <p class="quiet">The library file holds every raw take of {open.name}.</p>
          <div class="buttons">
            <Button
              disabled={running !== null}
              onClick={() =>
                void give('Writing the library file', (steering) => app.exportLibrary(steering))
              }
            >
              Export library file
            </Button>
            <Button
              disabled={running !== null || open.gestures.length === 0}
              onClick={() =>
                void give('Training and writing the firmware', () => app.exportFirmware())
              }
            >
              Export firmware
            </Button>
          </div>
          {running !== null && <Progress {...running} />}
        </>
      )}
      <p class="quiet">A file of another phone, or logs of other devices, become takes here.</p>
      <OpenLibraryFile>
        {open !== null && <Button href="#/import">Import CSV logs</Button>}
      </OpenLibraryFile>
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
    </Section>
  )
}
