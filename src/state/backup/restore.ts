import type { CallOptions, RecogniserClient } from '../../recogniser/client'
import type { PlannedLibrary } from '../../shared/backup/plan-restore'
import type { ReadLibrary } from '../../shared/backup/read-backup'
import { remembered } from '../../shared/backup/remembered'
import { filledUp, withheldBy, withoutWithheld } from '../../shared/backup/withheld'
import { contentId } from '../../shared/collect/content-id'
import { mapRecording } from '../../shared/collect/map-gestures'
import type {
  FullLibrary,
  Library,
  Recording,
  RecordingWithSamples,
} from '../../shared/model/library'
import { ok, type Result } from '../../shared/model/result'
import type { StoredFile } from '../../shared/protocol/recogniser'
import { PROGRESS } from '../../shared/words/en/progress'
import type { Store } from '../../storage/store'
import { newId } from '../id'
import { freeName, reidentify } from '../reidentify'
import type { SavedElsewhere } from '../saved-elsewhere'
import { librariesHere } from './libraries-here'

export interface RestoreParts {
  store: Store
  recogniser: RecogniserClient
  saved: SavedElsewhere
}

/**
 * Carries a plan out, one library at a time, each all or nothing. Stops at the first that fails;
 * those before it stay restored.
 * @returns how many recordings were added or brought back
 */
export async function restoreLibraries(
  parts: RestoreParts,
  file: StoredFile,
  plan: readonly PlannedLibrary[],
  { signal, onProgress }: Required<Pick<CallOptions, 'signal' | 'onProgress'>>,
): Promise<Result<number>> {
  let restored = 0
  const todo = plan.filter(({ way }) => way.kind !== 'nothing')
  for (const [index, planned] of todo.entries()) {
    const read = await parts.recogniser.readBackupLibrary(file, planned.place, {
      signal,
      onProgress: (steps) =>
        onProgress({
          done: index + steps.done / Math.max(1, steps.total),
          total: todo.length,
          what: PROGRESS.restoring(planned.library.name),
        }),
    })
    if (!read.ok) return read
    const done = await restoreOne(parts, planned, await permitted(parts.store, read.value))
    if (!done.ok) return done
    restored += done.value
  }
  return ok(restored)
}

/** What of a library may come back, and the library as this phone knows it. */
interface Permitted extends ReadLibrary {
  here: Library | undefined
}

/** Leaves out what was withdrawn or dropped on this phone since; a copy remembers that too. */
async function permitted(store: Store, read: ReadLibrary): Promise<Permitted> {
  const { library, recordings } = read.full
  const marks = await store.marks()
  const known = marks.size === 0 ? [] : recordings.map(withContent)
  const stored = (await librariesHere(store)).get(library.id)
  const here = remembered(stored, library, known, marks, new Date().toISOString())
  const isWithheld = withheldBy(here, library)
  const kept = recordings.filter(({ recording, samples }) => !isWithheld(recording, samples))
  return { ...read, here, full: { library: withoutWithheld(library, here), recordings: kept } }
}

function withContent({ recording, samples }: RecordingWithSamples): Recording {
  return { ...recording, contentId: contentId(samples) }
}

async function restoreOne(
  { store, saved }: RestoreParts,
  planned: PlannedLibrary,
  read: Permitted,
): Promise<Result<number>> {
  const { way } = planned
  if (way.kind === 'add') return fillUp(store, saved, planned, way, read)
  const taken = (await store.listLibraries()).map(({ name }) => name)
  const named = { ...read.full, library: { ...read.full.library, name: planned.library.name } }
  const full =
    way.kind === 'beside'
      ? reidentify(named, taken, newId, mapRecording)
      : freelyNamed(named, taken)
  const added = await store.addFullLibrary(full)
  if (!added.ok) return added
  const { id } = full.library
  if (way.kind === 'as-it-was') await keepItems(store, id, read)
  await saved.mark(
    id,
    full.recordings.map(({ recording }) => recording.id),
  )
  return ok(full.recordings.length)
}

async function fillUp(
  store: Store,
  saved: SavedElsewhere,
  planned: PlannedLibrary,
  way: Extract<PlannedLibrary['way'], { kind: 'add' }>,
  read: Permitted,
): Promise<Result<number>> {
  const { id } = planned.library
  const { here } = read
  const theirs = read.full.library
  const missing = new Set(way.missing)
  const recordings = read.full.recordings.filter(({ recording }) => missing.has(recording.id))
  const permittedIds = new Set(read.full.recordings.map(({ recording }) => recording.id))
  const undelete = way.undelete.filter((one) => permittedIds.has(one))
  const filled = await store.changeLibrary({
    // Stored and not readable: it comes back as it was backed up.
    library: here === undefined ? theirs : filledUp(here, theirs),
    add: recordings,
    update: [],
    remove: [],
    restore: undelete,
  })
  if (!filled.ok) return filled
  // Last: a failure before it leaves a deleted library deleted. One that is not stays as it is.
  const back = await store.restoreLibrary(id)
  if (!back.ok) return back
  await saved.mark(id, [...permittedIds])
  return ok(recordings.length + undelete.length)
}

function freelyNamed(full: FullLibrary, taken: string[]): FullLibrary {
  return { ...full, library: { ...full.library, name: freeName(full.library.name, taken) } }
}

/** Under the same ids, what refers to the library's parts still does. */
async function keepItems(store: Store, libraryId: string, { items }: ReadLibrary): Promise<void> {
  for (const { kind, id, keptAt, value } of items) {
    await store.putItem(kind, { id, libraryId, keptAt, value })
  }
}
