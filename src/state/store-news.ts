import { effect, type ReadonlySignal, signal } from '@preact/signals'
import { NOTICES } from '../shared/words/en/notices'
import type { ConnectionOptions } from '../storage/connection'
import { StorageError } from '../storage/failure'
import type { Shelf } from './shelf'

type StoreOptions = Required<
  Pick<
    ConnectionOptions,
    'onBlocked' | 'onSuperseded' | 'onWrittenElsewhere' | 'onPen' | 'onEvicted'
  >
>

/** What the store tells on its own because of other tabs, kept until the app takes it up. */
export interface StoreNews {
  /** For `openStore`. */
  options: StoreOptions
  /** Whether this tab is the one that stores. */
  writesHere: ReadonlySignal<boolean>
  /** Shows what other tabs have written, and says when this one had to give way. */
  follow(shelf: Shelf, readMore: () => Promise<void>): void
}

/** @param onBlocked an older version in another tab holds the start up; the message says what to do */
export function createStoreNews(onBlocked: (message: string) => void): StoreNews {
  const superseded = signal<string | null>(null)
  const writes = signal(0)
  const writesHere = signal(true)
  const evictions = signal(0)
  return {
    options: {
      onBlocked,
      onSuperseded: (message) => {
        superseded.value = message
      },
      onWrittenElsewhere: () => {
        writes.value += 1
      },
      onPen: (isHere) => {
        writesHere.value = isHere
      },
      onEvicted: () => {
        evictions.value += 1
      },
    },
    writesHere,
    follow(shelf, readMore) {
      let shown = writes.peek()
      let isReading = false
      /** One reading at a time; what is written meanwhile is read afterwards, once. */
      const read = async () => {
        if (isReading) return
        isReading = true
        try {
          while (shown !== writes.peek()) {
            shown = writes.peek()
            await shelf.reload()
            await readMore()
          }
        } catch (error) {
          if (!(error instanceof StorageError)) throw error
          shelf.notices.trouble(error.message)
        } finally {
          isReading = false
        }
      }
      effect(() => {
        if (writes.value !== shown) void read()
      })
      effect(() => {
        if (evictions.value > 0) void storeAgain(shelf)
      })
      effect(() => {
        if (superseded.value !== null) shelf.notices.trouble(superseded.value)
      })
    },
  }
}

const EVICTED = NOTICES.lostMeanwhile

const GONE_SINCE = NOTICES.lostSince

/** Says so when a library was open at the last visit and now there is none at all. */
export function sayWhatIsGone({ libraries, notices }: Shelf, openBefore: string | null): void {
  if (openBefore !== null && libraries.peek().length === 0) notices.trouble(GONE_SINCE)
}

/** What this page still has in memory goes back into the empty database. */
async function storeAgain({ store, libraries, notices, reload }: Shelf): Promise<void> {
  for (const library of libraries.peek()) await store.putLibrary(library)
  await reload()
  notices.trouble(EVICTED)
}
