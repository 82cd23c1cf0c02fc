import type { FullLibrary } from '../model/library'
import { BACKUP_FILE } from '../words/en/backup-file'

const NAME = BACKUP_FILE.noName

/**
 * The library with a gesture for every take whose own is missing, so that nothing recorded stays out
 * of a file. Each missing gesture gets one of its own: its takes belong together.
 */
export function withStandIns({ library, recordings }: FullLibrary): FullLibrary {
  const known = new Set(library.gestures.map(({ id }) => id))
  const missing = new Set(
    recordings.flatMap(({ recording }) =>
      recording.kind === 'background' || known.has(recording.gestureId)
        ? []
        : [recording.gestureId],
    ),
  )
  const names = new Set(library.gestures.map(({ name }) => name))
  const standIns = [...missing].map((id) => {
    const name = freeOf(names)
    names.add(name)
    return { id, name, note: '' }
  })
  return { library: { ...library, gestures: [...library.gestures, ...standIns] }, recordings }
}

function freeOf(names: ReadonlySet<string>): string {
  let name = NAME
  for (let count = 2; names.has(name); count++) name = `${NAME} ${count}`
  return name
}
