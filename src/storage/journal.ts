import type { Recording } from '../shared/model/library'
import { ok, type Result } from '../shared/model/result'
import type { SampleBlock } from '../shared/model/sample'
import { STORAGE_TROUBLE } from '../shared/words/en/storage-trouble'
import { compact } from './chunk'
import type { Connection } from './connection'
import { StorageError } from './failure'
import type { JournalLocks } from './journal-locks'
import { samplesWithin, withCounts } from './recordings'
import { requireLibrary } from './required'
import { restoreRecording } from './restore'
import { chunksOf } from './schema'
import type { Journal, UnfinishedRecording } from './store'
import { read, write } from './transaction'
import type { Unreadable } from './unreadable'

/**
 * Starts a journal for a recording that is about to run. The connection is held open for it until
 * it ends, so that a newer version in another tab waits for the recording.
 */
export async function openJournal(
  connection: Connection,
  locks: JournalLocks,
  recording: Recording,
): Promise<Result<Journal>> {
  const releases = [connection.hold(), locks.hold(recording.id)]
  const end = () => {
    for (const release of releases) release()
  }
  const opened = await write(connection, ['libraries', 'journals'], async (tx) => {
    await requireLibrary(tx, recording.libraryId)
    await tx.objectStore('journals').add(recording)
  })
  if (opened.ok) return ok(new StoredJournal(connection, recording.id, end))
  end()
  return opened
}

class StoredJournal implements Journal {
  /** Appends go one after another, so that a failed one leaves no hole in the chunk numbers. */
  #queue: Promise<unknown> = Promise.resolve()
  #nextIndex = 0

  constructor(
    readonly connection: Connection,
    readonly id: string,
    readonly onEnd: () => void,
  ) {}

  append(block: SampleBlock): Promise<Result<null>> {
    const own = compact(block)
    return this.#enqueue(async () => {
      if (own.tMs.length === 0) return ok(null)
      const added = await write(this.connection, ['journals', 'chunks'], async (tx) => {
        if ((await tx.objectStore('journals').getKey(this.id)) === undefined) throw gone()
        await tx.objectStore('chunks').add({ ...own, recordingId: this.id, index: this.#nextIndex })
        return null
      })
      if (added.ok) this.#nextIndex += 1
      return added
    })
  }

  finish(recording: Recording): Promise<Result<Recording>> {
    return this.#enqueue(async () => {
      const finished = await finishJournal(this.connection, this.id, recording)
      if (finished.ok) this.onEnd()
      return finished
    })
  }

  discard(): Promise<void> {
    return this.#enqueue(async () => {
      try {
        await discardJournal(this.connection, this.id)
      } finally {
        // What cannot be removed is offered as cut off, and holds nobody up.
        this.onEnd()
      }
    })
  }

  leave(): void {
    void this.#enqueue(async () => this.onEnd())
  }

  #enqueue<T>(job: () => Promise<T>): Promise<T> {
    const result = this.#queue.then(job)
    this.#queue = result.catch(() => undefined)
    return result
  }
}

/** Makes a journal a recording: one transaction, whatever its length, as the samples stay put. */
export function finishJournal(
  connection: Connection,
  id: string,
  recording: Recording,
): Promise<Result<Recording>> {
  return write(
    connection,
    ['libraries', 'recordings', 'journals', 'chunks'],
    async (tx): Promise<Recording> => {
      await requireLibrary(tx, recording.libraryId)
      if ((await tx.objectStore('journals').getKey(id)) === undefined) throw gone()
      const samples = await samplesWithin(tx, id)
      if (samples === null) throw damaged()
      const stored = withCounts({ ...recording, id }, samples)
      await Promise.all([
        tx.objectStore('recordings').add(stored),
        tx.objectStore('journals').delete(id),
      ])
      return stored
    },
  )
}

/** @throws StorageError when the database does not let it. */
export async function discardJournal(connection: Connection, id: string): Promise<void> {
  const removed = await write(connection, ['journals', 'chunks'], async (tx) => {
    await Promise.all([
      tx.objectStore('journals').delete(id),
      tx.objectStore('chunks').delete(chunksOf(id)),
    ])
  })
  if (!removed.ok) throw new StorageError(removed.code, removed.message)
}

/** Journals that no tab is writing, with at least one sample; oldest first. */
export async function listUnfinished(
  connection: Connection,
  unreadable: Unreadable,
  locks: JournalLocks,
): Promise<UnfinishedRecording[]> {
  const open = await locks.held()
  const found = await read(connection, ['journals', 'chunks'], async (tx) => {
    const facts = unreadable
      .sift(await tx.objectStore('journals').getAll(), 'journal', restoreRecording)
      .filter(({ id }) => !open.has(id))
    const blocks = await Promise.all(facts.map(({ id }) => samplesWithin(tx, id)))
    return facts.map((recording, i) => ({ recording, samples: blocks[i] ?? null }))
  })
  return found
    .flatMap(({ recording, samples }) => {
      const block = unreadable.note(samples, 'journal', recording.id)
      if (block === null || block.tMs.length === 0) return []
      return [{ recording: withCounts(recording, block), samples: block }]
    })
    .sort((a, b) => a.recording.recordedAt.localeCompare(b.recording.recordedAt))
}

function gone(): StorageError {
  return new StorageError('storage/no-journal', STORAGE_TROUBLE.alreadyOver)
}

function damaged(): StorageError {
  return new StorageError('storage/damaged', STORAGE_TROUBLE.damagedSamples)
}
