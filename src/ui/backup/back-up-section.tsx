import { useEffect, useState } from 'preact/hooks'
import { BACKUP } from '../../shared/words/en/backup'
import { type LeftOut, leftOutLine, unsavedSentence } from '../../shared/words/en/backup-words'
import type { BackupState } from '../../state/backup'
import { Button, Figure, Notice, Progress, Section } from '../common'
import { saveFile } from '../common/save-file'

type Counts = Awaited<ReturnType<BackupState['counts']>>

/** One tap: every library with every take, in one file for another place. */
export function BackUpSection({ backup }: { backup: BackupState }) {
  const [counts, setCounts] = useState<Counts | null>(null)
  const [saved, setSaved] = useState<string | null>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const [leftOut, setLeftOut] = useState<LeftOut[]>([])
  const making = backup.making.value
  const restored = backup.restoring.value
  useEffect(() => {
    backup.counts().then(setCounts, (error: unknown) => setWrong(messageOf(error)))
  }, [backup, saved, restored])
  const make = async () => {
    setSaved(null)
    setWrong(null)
    setLeftOut([])
    const made = await backup.make()
    if (!made.ok) return setWrong(made.code === 'worker/aborted' ? null : made.message)
    const { fileName, blob } = made.value
    setLeftOut(made.value.leftOut)
    const handedOver = async () => {
      await backup.handedOver(made.value)
      setSaved(BACKUP.handedOver(fileName, mib(blob.size)))
    }
    const given = await saveFile({ fileName, bytes: blob, handedOver })
    if (!given.ok) setWrong(given.message)
  }
  return (
    <Section title={BACKUP.backUp}>
      {counts !== null && <CountsView counts={counts} />}
      {making.state === 'running' ? (
        <Progress progress={making.progress} cancel={making.cancel} />
      ) : (
        <Button
          tone="amber"
          big
          wide
          disabled={counts === null || counts.libraries === 0}
          onClick={() => void make()}
        >
          {BACKUP.backUpEverything}
        </Button>
      )}
      {saved !== null && <p role="status">{saved}</p>}
      {leftOut.map((one) => (
        <Notice key={one.name} tone="trouble" live>
          {leftOutLine(one)}
        </Notice>
      ))}
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
    </Section>
  )
}

function CountsView({ counts: { unsaved, recordings, libraries } }: { counts: Counts }) {
  return (
    <>
      <div class="figures">
        <Figure
          label={BACKUP.onThisPhoneOnly}
          value={unsaved}
          note={BACKUP.onPhoneNote(recordings)}
        />
        <Figure
          label={BACKUP.inTheBackup}
          value={libraries}
          unit={BACKUP.librariesUnit(libraries)}
          note={BACKUP.recordingCount(recordings)}
        />
      </div>
      <p class="quiet">{unsavedSentence(unsaved, recordings)}</p>
    </>
  )
}

function mib(bytes: number): string {
  return (bytes / 1_048_576).toFixed(1)
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}
