import './backup.css'
import { useEffect, useState } from 'preact/hooks'
import { BACKUP } from '../../shared/words/en/backup'
import type { BackupState } from '../../state/backup'
import { Notice, Screen, useApp } from '../common'
import { BackUpSection } from './back-up-section'
import { RestoreSection } from './restore-section'

/** Everything on this phone into one file, and back. */
export function BackupScreen() {
  const app = useApp()
  const [backup, setBackup] = useState<BackupState | null>(null)
  const [wrong, setWrong] = useState(false)
  useEffect(() => {
    app.openBackup().then(setBackup, () => setWrong(true))
  }, [app])
  return (
    <Screen title={BACKUP.title} back="#/library">
      {wrong && (
        <Notice tone="trouble" live>
          {BACKUP.notLoaded}
        </Notice>
      )}
      {backup !== null && (
        <>
          <BackUpSection backup={backup} />
          <RestoreSection backup={backup} />
        </>
      )}
    </Screen>
  )
}
