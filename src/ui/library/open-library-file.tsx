import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { LIBRARY_OPEN } from '../../shared/words/en/library-open'
import { Button, FileButton, HOME, Notice, Progress, useApp, wayFromHere } from '../common'
import { useLongWork } from '../common/use-long-work'

/** Reads a library file from this device and opens it as a new library; `children` stand beside. */
export function OpenLibraryFile({ children }: { children?: ComponentChildren }) {
  const app = useApp()
  const { running, run } = useLongWork()
  const [wrong, setWrong] = useState<string | null>(null)
  const read = async (file: File) => {
    const lead = wayFromHere()
    const bytes = new Uint8Array(await file.arrayBuffer())
    const added = await run(LIBRARY_OPEN.reading, (steering) => app.importLibrary(bytes, steering))
    if (added.ok) return lead(HOME)
    setWrong(added.code === 'worker/aborted' ? null : `${file.name}: ${added.message}`)
  }
  return (
    <>
      {running === null ? (
        <div class={children === undefined ? undefined : 'buttons'}>
          <FileButton
            accept=".zip,application/zip"
            onFiles={([file]) => file !== undefined && void read(file)}
          >
            {LIBRARY_OPEN.openFile}
          </FileButton>
          {children}
        </div>
      ) : (
        <Progress {...running} />
      )}
      {wrong !== null && (
        <Notice tone="trouble" live>
          <p>{wrong}</p>
          <Button href="#/backup">{LIBRARY_OPEN.seeWhatIsWhole}</Button>
        </Notice>
      )}
    </>
  )
}
