import type { Store } from '../storage/store'

/** A long result with what it was measured on. */
export interface Kept<T> {
  /** Fingerprint of the library it came from. */
  basis: string
  /** Another version of the app measured it: on the same library this one may find other figures. */
  byOther?: boolean
  /** How it was asked for, such as what was held out. */
  variant: string
  /** RFC 3339 in UTC. */
  keptAt: string
  value: T
}

/** Where a job's last result of each library outlives the page. */
export interface ResultKeeper<T> {
  /** Null when there is none, or none that this version can read. */
  read(libraryId: string): Promise<Kept<T> | null>
  write(libraryId: string, kept: Kept<T>): Promise<void>
}

export interface KeepOptions<T> {
  store: Store
  /** Which core and code measure now: a result of others is kept and shown, and is not fresh. */
  core: string
  /** One word; a library has one result of each name. */
  name: string
  /** Says whether a value of unknown origin is a result. Loaded when there is one to read. */
  loadCheck: () => Promise<(value: unknown) => value is T>
}

/**
 * Keeps results among the store's items. A result that cannot be written is lost with the page and
 * nothing else: it can be measured again.
 */
export function keepResults<T>({ store, core, name, loadCheck }: KeepOptions<T>): ResultKeeper<T> {
  const idOf = (libraryId: string) => `${libraryId} ${name}`
  return {
    read: async (libraryId) => {
      const items = await store.listItems('results', libraryId)
      const item = items.find(({ id }) => id === idOf(libraryId))
      const stored = item && storedResult(item.value)
      if (item === undefined || !stored) return null
      const isResult = await loadCheck()
      const { value, variant } = stored
      if (!isResult(value)) return null
      return {
        basis: stored.basis,
        byOther: stored.core !== core,
        variant,
        keptAt: item.keptAt,
        value,
      }
    },
    write: async (libraryId, { basis, variant, keptAt, value }) => {
      const id = idOf(libraryId)
      await store.putItem('results', {
        id,
        libraryId,
        keptAt,
        value: { core, basis, variant, value },
      })
    },
  }
}

interface StoredResult {
  core: string
  basis: string
  variant: string
  value: unknown
}

function storedResult(value: unknown): StoredResult | null {
  if (typeof value !== 'object' || value === null) return null
  const { core, basis, variant, ...rest } = value as Record<string, unknown>
  if (typeof core !== 'string' || typeof basis !== 'string' || typeof variant !== 'string')
    return null
  return { core, basis, variant, value: rest.value }
}
