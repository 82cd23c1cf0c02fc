import { type ReadonlySignal, signal } from '@preact/signals'
import type { CallOptions } from '../../recogniser/client'
import type { BackupContents } from '../../shared/backup/contents'
import {
  type PlannedLibrary,
  planRestore,
  type RestoreWish,
} from '../../shared/backup/plan-restore'
import { remembered } from '../../shared/backup/remembered'
import type { Recording } from '../../shared/model/library'
import type { Result } from '../../shared/model/result'
import type { Progress } from '../../shared/protocol/recogniser'
import { PROGRESS } from '../../shared/words/en/progress'
import type { Job } from '../app'
import type { Shelf } from '../shelf'
import { thrown } from '../thrown'
import { librariesHere } from './libraries-here'
import { type MadeBackup, makeBackup } from './make'
import { type RestoreParts, restoreLibraries } from './restore'

/** A backup or library file that was looked through. */
export interface OpenedBackup {
  file: File
  contents: BackupContents
}

export interface BackupState {
  /** Recordings of all libraries, and those of them that are on this phone only. */
  counts(): Promise<{ recordings: number; unsaved: number; libraries: number }>
  making: ReadonlySignal<Job<MadeBackup>>
  /** Writes everything on this phone into one file. */
  make(): Promise<Result<MadeBackup>>
  /** The file was handed to the person: its recordings are safe elsewhere. */
  handedOver(made: MadeBackup): Promise<void>
  opening: ReadonlySignal<Job<OpenedBackup>>
  /** Looks through a file; nothing is stored. */
  open(file: File): Promise<Result<OpenedBackup>>
  /** What a restore would do. */
  plan(opened: OpenedBackup, wish: RestoreWish): Promise<PlannedLibrary[]>
  restoring: ReadonlySignal<Job<number>>
  restore(opened: OpenedBackup, plan: PlannedLibrary[]): Promise<Result<number>>
}

type Steer = Required<Pick<CallOptions, 'signal' | 'onProgress'>>

export function createBackup(shelf: Shelf, parts: RestoreParts): BackupState {
  const { store, recogniser, saved } = parts
  const making = signal<Job<MadeBackup>>({ state: 'none' })
  const opening = signal<Job<OpenedBackup>>({ state: 'none' })
  const restoring = signal<Job<number>>({ state: 'none' })

  return {
    counts: async () => {
      const libraries = await store.listLibraries()
      const lists = await Promise.all(libraries.map(({ id }) => store.listRecordings(id)))
      const unsaved = await Promise.all(
        libraries.map(({ id }, index) => saved.unsavedOf(id, lists[index] as Recording[])),
      )
      return {
        libraries: libraries.length,
        recordings: lists.flat().length,
        unsaved: unsaved.reduce((sum, one) => sum + one, 0),
      }
    },
    making,
    make: () => run(making, (steer) => makeBackup(store, recogniser, steer)),
    handedOver: async ({ recordingIds }) => {
      for (const [libraryId, ids] of recordingIds) await saved.mark(libraryId, ids)
    },
    opening,
    open: (file) =>
      run(opening, async (steer) => {
        const read = await recogniser.readBackup(file, steer)
        return read.ok ? { ok: true, value: { file, contents: read.value } } : read
      }),
    plan: async ({ contents }, wish) => {
      const [inventory, here, marks] = await Promise.all([
        store.inventory(),
        librariesHere(store),
        store.marks(),
      ])
      const at = new Date().toISOString()
      for (const { library, recordings } of contents.libraries) {
        const known = remembered(here.get(library.id), library, recordings, marks, at)
        if (known !== undefined) here.set(library.id, known)
      }
      return planRestore(contents, inventory, here, wish)
    },
    restoring,
    restore: async ({ file }, plan) => {
      const done = await run(restoring, (steer) => restoreLibraries(parts, file, plan, steer))
      await shelf.reload()
      if (done.ok) await shelf.askToKeep()
      return done
    },
  }
}

/** Runs a job that can be cancelled, with its state in a signal; cancelled, nothing is shown. */
async function run<T>(
  job: { value: Job<T> },
  work: (steer: Steer) => Promise<Result<T>>,
): Promise<Result<T>> {
  const abort = new AbortController()
  const cancel = () => abort.abort()
  const onProgress = (progress: Progress) => {
    if (!abort.signal.aborted) job.value = { state: 'running', progress, cancel }
  }
  onProgress({ done: 0, total: 1, what: PROGRESS.starting })
  const result = await work({ signal: abort.signal, onProgress }).catch(thrown)
  if (result.ok) job.value = { state: 'done', value: result.value, stale: false }
  else if (abort.signal.aborted) job.value = { state: 'none' }
  else job.value = { state: 'failed', message: result.message }
  return result
}
