import { useState } from 'preact/hooks'
import type { Result } from '../../shared/model/result'
import { byteText } from '../../shared/present/numbers'
import { Button, Notice, Section, useApp } from '../common'
import { type OutFile, saveFile } from '../common/save-file'

type Outcome = { state: 'idle' | 'making' } | { state: 'saved' | 'failed'; text: string }

/** Firmware for the board and the library as a backup; both are made on this phone. */
export function ExportSection() {
  const app = useApp()
  const [outcome, setOutcome] = useState<Outcome>({ state: 'idle' })
  const give = async (make: () => Promise<Result<OutFile>>) => {
    setOutcome({ state: 'making' })
    const made = await make()
    if (!made.ok) {
      setOutcome({ state: 'failed', text: made.message })
      return
    }
    const saved = await saveFile(made.value)
    if (!saved.ok) setOutcome({ state: 'failed', text: saved.message })
    else setOutcome({ state: 'saved', text: savedText(made.value) })
  }
  const making = outcome.state === 'making'
  const gestures = app.library.current.value?.gestures.length ?? 0
  return (
    <Section title="Take it to the bench">
      <p>
        The firmware is C99 source: the very recogniser that runs here, the model, test vectors and
        a self-test.
      </p>
      <Button
        tone="amber"
        wide
        disabled={making || gestures < 1}
        onClick={() => void give(() => app.exportFirmware())}
      >
        {making ? 'Making the file …' : 'Export firmware'}
      </Button>
      <Button wide disabled={making} onClick={() => void give(() => app.exportLibrary())}>
        Export library file
      </Button>
      {outcome.state === 'saved' && (
        <p class="small quiet" role="status">
          {outcome.text}
        </p>
      )}
      {outcome.state === 'failed' && (
        <Notice tone="trouble" live>
          <p>{outcome.text}</p>
        </Notice>
      )}
    </Section>
  )
}

function savedText(file: OutFile): string {
  return `${file.fileName}, ${byteText(file.bytes.length)}. Raw takes stay in the library file: it is the backup.`
}
