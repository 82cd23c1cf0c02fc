import { useState } from 'preact/hooks'
import type { Result } from '../../shared/model/result'
import { LIBRARY } from '../../shared/words/en/library'
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
    <Section title={LIBRARY.files}>
      {open !== null && (
        <>
          <p class="quiet">{LIBRARY.fileHolds(open.name)}</p>
          <div class="buttons">
            <Button
              disabled={running !== null}
              onClick={() =>
                void give(LIBRARY.writingLibraryFile, (steering) => app.exportLibrary(steering))
              }
            >
              {LIBRARY.exportLibraryFile}
            </Button>
            <Button
              disabled={running !== null || open.gestures.length === 0}
              onClick={() => void give(LIBRARY.writingFirmware, () => app.exportFirmware())}
            >
              {LIBRARY.exportFirmware}
            </Button>
          </div>
          {running !== null && <Progress {...running} />}
        </>
      )}
      <p class="quiet">{LIBRARY.filesBecomeTakes}</p>
      <OpenLibraryFile>
        {open !== null && <Button href="#/import">{LIBRARY.importCsvLogs}</Button>}
      </OpenLibraryFile>
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
    </Section>
  )
}
