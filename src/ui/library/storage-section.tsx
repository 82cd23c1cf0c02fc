import { storageSentence } from '../../shared/words/en/storage-words'
import { Button, Figure, Section, useApp } from '../common'

/** Room used and left on this phone, and whether the browser promised to keep it. */
export function StorageSection() {
  const facts = useApp().library.storageFacts.value
  if (facts === null) return null
  return (
    <Section title="Storage">
      <div class="figures">
        <Figure label="Used" {...size(facts.usedBytes)} />
        <Figure label="Allowed by the browser" {...size(facts.quotaBytes)} />
      </div>
      <p class="quiet">{storageSentence(facts.persisted)}</p>
      {facts.unreadableItems > 0 && (
        <p>
          {facts.unreadableItems} stored items could not be read and are left out. Back up now, to
          keep the rest.
        </p>
      )}
      <Button wide href="#/backup">
        Back up or restore
      </Button>
    </Section>
  )
}

function size(bytes: number): { value: string; unit: string } {
  if (bytes >= 1024 ** 3) return { value: (bytes / 1024 ** 3).toFixed(1), unit: 'GiB' }
  return { value: (bytes / 1024 ** 2).toFixed(1), unit: 'MiB' }
}
