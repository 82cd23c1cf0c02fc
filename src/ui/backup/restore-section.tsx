import { useEffect, useState } from 'preact/hooks'
import type { PlannedLibrary, RestoreWish } from '../../shared/backup/plan-restore'
import { BACKUP } from '../../shared/words/en/backup'
import { contentsSentence } from '../../shared/words/en/backup-words'
import type { BackupState, OpenedBackup } from '../../state/backup'
import { Button, Choice, FileButton, HOME, Notice, Progress, Section } from '../common'
import { GoneView, PlannedView } from './planned-view'

/** A backup or library file is looked through first; then it says what a restore would do. */
export function RestoreSection({ backup }: { backup: BackupState }) {
  const opening = backup.opening.value
  return (
    <Section title={BACKUP.restore}>
      <p class="quiet">{BACKUP.restoreLead}</p>
      {opening.state === 'running' ? (
        <Progress progress={opening.progress} cancel={opening.cancel} />
      ) : (
        <FileButton
          accept=".zip,application/zip"
          onFiles={([file]) => file !== undefined && void backup.open(file)}
        >
          {opening.state === 'done' ? BACKUP.chooseAnotherFile : BACKUP.chooseAFile}
        </FileButton>
      )}
      {opening.state === 'failed' && (
        <Notice tone="trouble" live>
          {opening.message}
        </Notice>
      )}
      {opening.state === 'done' && <Plan backup={backup} opened={opening.value} />}
    </Section>
  )
}

const WISHES: { value: RestoreWish; text: string }[] = [
  { value: 'add', text: BACKUP.addWhatIsMissing },
  { value: 'beside', text: BACKUP.putBeside },
]

function Plan({ backup, opened }: { backup: BackupState; opened: OpenedBackup }) {
  const [wish, setWish] = useState<RestoreWish>('add')
  const [plan, setPlan] = useState<PlannedLibrary[]>([])
  const restoring = backup.restoring.value
  useEffect(() => {
    void backup.plan(opened, wish).then(setPlan)
  }, [backup, opened, wish, restoring])
  const isHere = plan.some(({ way }) => way.kind === 'add' || way.kind === 'nothing')
  const todo = plan.filter(({ way }) => way.kind !== 'nothing')
  return (
    <>
      <p role="status">
        {opened.file.name}: {contentsSentence(opened.contents)}
      </p>
      {(isHere || wish === 'beside') && (
        <Choice legend={BACKUP.sameLibraries} value={wish} options={WISHES} onChange={setWish} />
      )}
      <ul class="backup-plan">
        {plan.map((planned) => (
          <PlannedView key={planned.place.library.start} planned={planned} />
        ))}
        {opened.contents.gone.map((one) => (
          <GoneView key={one.name} {...one} />
        ))}
      </ul>
      {restoring.state === 'running' && (
        <Progress progress={restoring.progress} cancel={restoring.cancel} />
      )}
      {restoring.state === 'failed' && (
        <Notice tone="trouble" live>
          {BACKUP.restoredStays(restoring.message)}
        </Notice>
      )}
      {restoring.state === 'done' && (
        <p role="status">
          {BACKUP.restored(restoring.value)} <a href={HOME}>{BACKUP.toMoves}</a>
        </p>
      )}
      {todo.length > 0 && restoring.state !== 'running' && (
        <Button wide onClick={() => void backup.restore(opened, plan)}>
          {BACKUP.restore}
        </Button>
      )}
    </>
  )
}
