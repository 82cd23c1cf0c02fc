import { type OpenDBCallbacks, openDB } from 'idb'
import { STORAGE_TROUBLE } from '../shared/words/en/storage-trouble'
import { StorageError, toStorageError } from './failure'
import { SCHEMA_STEPS, type SchemaStep } from './migrations'
import { OtherTabs } from './other-tabs'
import { Pen, type PenAnswer } from './pen'
import type { Database, MovewrightDb, StoreNames, UpgradeTransaction } from './schema'

export interface ConnectionOptions {
  /** Schema to open; tests give older and newer ones. */
  steps?: readonly SchemaStep[]
  /** Another tab keeps an older version open, so that this one has to wait for it. */
  onBlocked?: (message: string) => void
  /** This tab gave way to a newer version in another tab; every later call fails. */
  onSuperseded?: (message: string) => void
  /** Another tab has written something that screens show: read it again. */
  onWrittenElsewhere?: () => void
  /** Whether this tab is the one that writes; the others only read. */
  onPen?: (isHere: boolean) => void
  /** The browser, or a person, deleted the database under an open page; it is there again, empty. */
  onEvicted?: () => void
}

export const BLOCKED_MESSAGE = STORAGE_TROUBLE.olderTab
export const SUPERSEDED_MESSAGE = STORAGE_TROUBLE.newerTab

/** How long after a failed attempt a lost connection is opened again. */
const OPEN_AGAIN_MS = 500

export const READER_MESSAGE = STORAGE_TROUBLE.otherTabStores

/**
 * Holds the one database connection of this tab, opens it again when the browser lost it, and lets
 * a newer version in another tab have its way as soon as no recording is running here.
 */
export class Connection {
  #opening: Promise<Database> | null = null
  #holds = 0
  /** Another page waits for this connection to end: for a newer version, or to delete the data. */
  #giveWay: 'newer' | 'deletion' | null = null
  #closed: StorageError | null = null
  #wasOpen = false
  /** The database was made by this connection, perhaps in an attempt that then failed. */
  #isNew = false
  readonly #tabs: OtherTabs | null
  readonly #pen: Pen

  constructor(
    readonly name: string,
    readonly options: ConnectionOptions = {},
  ) {
    const { onWrittenElsewhere } = options
    this.#tabs = onWrittenElsewhere === undefined ? null : new OtherTabs(name, onWrittenElsewhere)
    this.#pen = new Pen(name, {
      onPen: (isHere) => options.onPen?.(isHere),
      mayGive: () => this.#holds === 0,
    })
  }

  /** Tells other tabs that these stores were written. */
  wrote(stores: readonly StoreNames[]): void {
    this.#tabs?.tell(stores)
  }

  /** @throws StorageError when the database cannot be opened, or not any more. */
  async get(): Promise<Database> {
    if (this.#closed !== null) throw this.#closed
    this.#opening ??= this.#open()
    return this.#opening
  }

  /** @throws StorageError when another tab is the one that writes */
  async needPen(): Promise<void> {
    if (await this.#pen.isHere()) return
    throw new StorageError('storage/reader', READER_MESSAGE)
  }

  /** Asks the tab that writes to let this one do it. */
  takePen(): Promise<PenAnswer> {
    return this.#pen.take()
  }

  /** Keeps the connection open against a newer version in another tab, until released. */
  hold(): () => void {
    this.#holds += 1
    let held = true
    return () => {
      if (!held) return
      held = false
      this.#holds -= 1
      if (this.#holds === 0) this.#yield()
    }
  }

  /** Forgets a connection that turned out to be dead; the next `get` opens a new one. */
  drop(): void {
    this.#opening = null
  }

  close(reason = new StorageError('storage/closed', STORAGE_TROUBLE.closed)): void {
    this.#closed = reason
    this.#tabs?.close()
    this.#pen.close()
    const opening = this.#opening
    this.#opening = null
    opening?.then((db) => db.close()).catch(() => undefined)
  }

  async #open(): Promise<Database> {
    try {
      const db = await openDatabase(this.name, this.options, {
        made: () => {
          this.#isNew = true
        },
        blocking: (_current, wanted) => {
          this.#giveWay = wanted === null ? 'deletion' : 'newer'
          if (this.#holds === 0) this.#yield()
        },
        terminated: () => this.#openAgain(),
      })
      if (this.#isNew && this.#wasOpen) this.options.onEvicted?.()
      this.#isNew = false
      this.#wasOpen = true
      return db
    } catch (error) {
      this.drop()
      throw error
    }
  }

  /** At once and not with the next call, to learn whether the data are still there. */
  #openAgain(): void {
    this.drop()
    if (this.#closed !== null) return
    // While the browser still deletes, opening fails; then it is tried a little later.
    this.get().catch(() => setTimeout(() => this.get().catch(() => undefined), OPEN_AGAIN_MS))
  }

  #yield(): void {
    if (this.#giveWay === 'newer') this.#supersede()
    if (this.#giveWay !== 'deletion') return
    this.#giveWay = null
    void this.#opening?.then((db) => {
      db.close()
      this.#openAgain()
    })
  }

  #supersede(): void {
    this.close(new StorageError('storage/superseded', SUPERSEDED_MESSAGE))
    this.options.onSuperseded?.(SUPERSEDED_MESSAGE)
  }
}

async function openDatabase(
  name: string,
  { steps = SCHEMA_STEPS, onBlocked }: ConnectionOptions,
  {
    made,
    ...events
  }: Pick<OpenDBCallbacks<MovewrightDb>, 'blocking' | 'terminated'> & { made: () => void },
): Promise<Database> {
  let upgradeError: unknown = null
  try {
    return await openDB<MovewrightDb>(name, steps.length, {
      ...events,
      blocked: () => onBlocked?.(BLOCKED_MESSAGE),
      upgrade: (db, oldVersion, _newVersion, transaction) => {
        if (oldVersion === 0) made()
        try {
          for (const step of steps.slice(oldVersion)) step(db, transaction)
        } catch (error) {
          upgradeError = error
          abort(transaction)
        }
      },
    })
  } catch (error) {
    throw openError(upgradeError ?? error, upgradeError !== null)
  }
}

function abort(transaction: UpgradeTransaction): void {
  transaction.done.catch(() => undefined)
  transaction.abort()
}

function openError(error: unknown, inUpgrade: boolean): StorageError {
  if (inUpgrade) {
    return new StorageError('storage/upgrade-failed', STORAGE_TROUBLE.upgradeFailed, {
      cause: error,
    })
  }
  if (error instanceof DOMException && error.name === 'VersionError') {
    return new StorageError('storage/newer', STORAGE_TROUBLE.newer, { cause: error })
  }
  return toStorageError(error)
}
