import type { PlannedLibrary } from '../../shared/backup/plan-restore'
import { BACKUP } from '../../shared/words/en/backup'
import { lostLine, sourceSentence, waySentence } from '../../shared/words/en/backup-words'

/** One library of a backup: what becomes of it, and what of it is lost. */
export function PlannedView({ planned }: { planned: PlannedLibrary }) {
  const source = sourceSentence(planned)
  return (
    <li>
      <h3>{planned.library.name}</h3>
      <p>{waySentence(planned)}</p>
      {source !== null && <p class="quiet">{source}</p>}
      {planned.lost.length > 0 && (
        <details class="backup-lost">
          <summary>{BACKUP.damaged(planned.lost.length)}</summary>
          <ul>
            {planned.lost.map((one) => (
              <li key={one.file}>{lostLine(one)}</li>
            ))}
          </ul>
        </details>
      )}
    </li>
  )
}

/** A library of which nothing is whole. */
export function GoneView({ name, takes }: { name: string; takes: number }) {
  return (
    <li>
      <h3>{name}</h3>
      <p>{BACKUP.nothingWhole(takes)}</p>
    </li>
  )
}
