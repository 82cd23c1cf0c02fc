import { useState } from 'preact/hooks'
import type { Result } from '../../shared/model/result'
import { PROP } from '../../shared/words/en/prop'
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
    libraryFile: () => void give(() => run(PROP.writingTheLibraryFile, app.exportLibrary)),
  }
}

function savedText({ fileName, bytes }: OutFile): string {
  return PROP.handedOver(fileName, bytes.length)
}

/** The main action, for the foot of the screen. */
export function FirmwareButton({ exports }: { exports: Exports }) {
  const gestures = useApp().library.current.value?.gestures.length ?? 0
  const making = exports.outcome.state === 'making'
  return (
    <Button tone="amber" big wide disabled={making || gestures < 1} onClick={exports.firmware}>
      {making ? PROP.making : PROP.exportFirmware}
    </Button>
  )
}

/** What the firmware holds, the backup, and the outcome of the last export. */
export function ExportSection({ exports }: { exports: Exports }) {
  const { outcome, running } = exports
  return (
    <Section title={PROP.exportTitle}>
      <p>{PROP.exportLead}</p>
      {outcome.state === 'failed' && (
        <Notice tone="trouble" live>
          <p>{outcome.text}</p>
        </Notice>
      )}
      {outcome.state === 'saved' && <p role="status">{outcome.text}</p>}
      {running !== null && <Progress {...running} />}
      <Button wide disabled={outcome.state === 'making'} onClick={exports.libraryFile}>
        {PROP.exportLibraryFile}
      </Button>
    </Section>
  )
}
