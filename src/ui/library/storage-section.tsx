import { LIBRARY } from '../../shared/words/en/library'
import { storageSentence } from '../../shared/words/en/storage-words'
import { Button, Figure, Section, useApp } from '../common'

/** Room used and left on this phone, and whether the browser promised to keep it. */
export function StorageSection() {
  const facts = useApp().library.storageFacts.value
  if (facts === null) return null
  return (
    <Section title={LIBRARY.storage}>
      <div class="figures">
        <Figure label={LIBRARY.used} {...size(facts.usedBytes)} />
        <Figure label={LIBRARY.allowed} {...size(facts.quotaBytes)} />
      </div>
      <p class="quiet">{storageSentence(facts.persisted)}</p>
      {facts.unreadableItems > 0 && <p>{LIBRARY.unreadable(facts.unreadableItems)}</p>}
      <Button wide href="#/backup">
        {LIBRARY.toBackup}
      </Button>
    </Section>
  )
}

function size(bytes: number): { value: string; unit: string } {
  if (bytes >= 1024 ** 3) return { value: (bytes / 1024 ** 3).toFixed(1), unit: 'GiB' }
  return { value: (bytes / 1024 ** 2).toFixed(1), unit: 'MiB' }
}
