import type { PlannedLibrary } from '../../shared/backup/plan-restore'
import { lostLine, sourceSentence, waySentence } from '../../shared/words/en/backup-words'
import { plural } from '../../shared/words/en/numbers'

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
          <summary>{plural('recording', planned.lost.length)} in the file damaged</summary>
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
      <p>Nothing of it is whole: {plural('take', takes)} lost. Look for an older backup.</p>
    </li>
  )
}
