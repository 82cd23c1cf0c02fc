import { type ReadonlySignal, signal } from '@preact/signals'
import type { Library, Recording } from '../shared/model/library'
import type { Result } from '../shared/model/result'
import type { StorageFacts, Store } from '../storage/store'
import type { Notices } from './notices'
import { prefer, preferences } from './preferences'

/** What the slices of the library share: the store, the signals read from it, and how to reread. */
export interface Shelf {
  store: Store
  notices: Notices
  libraries: ReadonlySignal<Library[]>
  current: ReadonlySignal<Library | null>
  recordings: ReadonlySignal<Recording[]>
  facts: ReadonlySignal<StorageFacts | null>
  /** Reads the list of libraries again, and the current one's recordings. */
  reload(): Promise<void>
  reloadRecordings(): Promise<void>
  open(id: string | null): Promise<void>
  /** Stores a changed library and shows it; a failure becomes a notice. */
  save(library: Library): Promise<boolean>
  /** Asks the browser, once a visit, to keep the data: to be called when own data was stored. */
  askToKeep(): Promise<void>
  /** Tells a failure in a notice; returns whether it went well. */
  check<T>(result: Result<T>): result is { ok: true; value: T }
}

export function createShelf(store: Store, notices: Notices): Shelf {
  const libraries = signal<Library[]>([])
  const current = signal<Library | null>(null)
  const recordings = signal<Recording[]>([])
  const facts = signal<StorageFacts | null>(null)

  const reloadRecordings = async () => {
    const id = current.peek()?.id
    const found = id === undefined ? [] : await store.listRecordings(id)
    if (current.peek()?.id === id) recordings.value = newestFirst(found)
    facts.value = await store.facts()
  }
  const open = async (id: string | null) => {
    const library = libraries.peek().find((one) => one.id === id) ?? null
    if (library?.id !== current.peek()?.id) recordings.value = []
    current.value = library
    prefer({ libraryId: library?.id ?? null })
    await reloadRecordings()
  }
  const reload = async () => {
    libraries.value = await store.listLibraries()
    const wanted = current.peek()?.id ?? preferences.peek().libraryId
    const found = libraries.peek().find((one) => one.id === wanted) ?? libraries.peek()[0]
    await open(found?.id ?? null)
  }
  let asked = false
  const askToKeep = async () => {
    if (asked) return
    asked = true
    await store.requestPersistence()
    facts.value = await store.facts()
  }
  const check = <T>(result: Result<T>): result is { ok: true; value: T } => {
    if (!result.ok) notices.trouble(result.message)
    return result.ok
  }
  const save = async (library: Library) => {
    if (!check(await store.putLibrary(library))) return false
    libraries.value = libraries.peek().map((one) => (one.id === library.id ? library : one))
    if (current.peek()?.id === library.id) current.value = library
    return true
  }
  return {
    store,
    notices,
    libraries,
    current,
    recordings,
    facts,
    reload,
    reloadRecordings,
    open,
    save,
    askToKeep,
    check,
  }
}

function newestFirst(recordings: Recording[]): Recording[] {
  return [...recordings].sort((a, b) => (a.recordedAt < b.recordedAt ? 1 : -1))
}
