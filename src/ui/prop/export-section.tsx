import { useState } from 'preact/hooks'
import type { Result } from '../../shared/model/result'
import { byteText } from '../../shared/words/en/numbers'
import type { App } from '../../state/app'
import { Button, Notice, Progress, Section, useApp } from '../common'
import { type OutFile, saveFile } from '../common/save-file'
import { type LongWork, useLongWork } from '../common/use-long-work'

export type ExportOutcome =
  | { state: 'idle' | 'making' }
  | { state: 'saved' | 'failed'; text: string }

export interface Exports {
  outcome: ExportOutcome
  running: LongWork['running']
  firmware(): void
  libraryFile(): void
}

/** Both ways out of the phone, and how the last one went. */
export function useExports(app: App): Exports {
  const [outcome, setOutcome] = useState<ExportOutcome>({ state: 'idle' })
  const { running, run } = useLongWork()
  const give = async (make: () => Promise<Result<OutFile>>) => {
    setOutcome({ state: 'making' })
    const made = await make()
    const saved = made.ok ? await saveFile(made.value) : made
    if (!saved.ok && saved.code === 'worker/aborted') setOutcome({ state: 'idle' })
    else if (!saved.ok) setOutcome({ state: 'failed', text: saved.message })
    else if (made.ok) setOutcome({ state: 'saved', text: savedText(made.value) })
  }
  return {
    outcome,
    running,
    firmware: () => void give(() => app.exportFirmware()),
    libraryFile: () => void give(() => run('Writing the library file', app.exportLibrary)),
  }
}

function savedText({ fileName, bytes }: OutFile): string {
  return `${fileName}, ${byteText(bytes.length)}, handed over.`
}

/** The main action, for the foot of the screen. */
export function FirmwareButton({ exports }: { exports: Exports }) {
  const gestures = useApp().library.current.value?.gestures.length ?? 0
  const making = exports.outcome.state === 'making'
  return (
    <Button tone="amber" big wide disabled={making || gestures < 1} onClick={exports.firmware}>
      {making ? 'Making the file …' : 'Export firmware'}
    </Button>
  )
}

/** What the firmware holds, the backup, and the outcome of the last export. */
export function ExportSection({ exports }: { exports: Exports }) {
  const { outcome, running } = exports
  return (
    <Section title="Take it to the bench">
      <p>
        The firmware is C99 source: the very recogniser that runs here, the model, test vectors and
        a self-test. The library file is the backup: every raw take is in it.
      </p>
      {outcome.state === 'failed' && (
        <Notice tone="trouble" live>
          <p>{outcome.text}</p>
        </Notice>
      )}
      {outcome.state === 'saved' && <p role="status">{outcome.text}</p>}
      {running !== null && <Progress {...running} />}
      <Button wide disabled={outcome.state === 'making'} onClick={exports.libraryFile}>
        Export library file
      </Button>
    </Section>
  )
}
