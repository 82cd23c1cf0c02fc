import type { FullLibrary, Gesture } from '../model/library'
import type { SampleBlock } from '../model/sample'
import type { Collection, Identified } from './collection'
import { contentId } from './content-id'
import type { SessionFile } from './session'

/** What a file brings, before it meets a library. */
export interface Incoming {
  /** Of the file, for people. */
  name: string
  kind: 'session' | 'library'
  /** Library it comes from, as it was called there. */
  from: { libraryId: string; title: string }
  gestures: { id: string; name: string }[]
  collection: Collection
  /** By content id. */
  samples: Map<string, SampleBlock>
}

export function incomingSession(name: string, { session, recordings }: SessionFile): Incoming {
  const collection = { sessions: [session], withdrawals: [], recordings: [] }
  const { libraryId, title, gestures } = session
  const bare = { name, kind: 'session', from: { libraryId, title }, gestures, collection } as const
  return withRecordings(bare, recordings)
}

export function incomingLibrary(name: string, { library, recordings }: FullLibrary): Incoming {
  const collection: Collection = {
    sessions: library.sessions ?? [],
    withdrawals: library.withdrawals ?? [],
    recordings: [],
  }
  const gestures = library.gestures.map((one) => ({ id: one.id, name: one.name }))
  const from = { libraryId: library.id, title: library.name }
  return withRecordings({ name, kind: 'library', from, gestures, collection }, recordings)
}

function withRecordings(
  incoming: Omit<Incoming, 'samples'>,
  recordings: FullLibrary['recordings'],
): Incoming {
  const samples = new Map<string, SampleBlock>()
  const identified: Identified[] = []
  for (const { recording, samples: block } of recordings) {
    const id = recording.contentId ?? contentId(block)
    // The same samples twice in one file are one recording.
    if (samples.has(id)) continue
    samples.set(id, block)
    identified.push({ ...recording, contentId: id })
  }
  return { ...incoming, collection: { ...incoming.collection, recordings: identified }, samples }
}

/**
 * Own gestures for those of a file: by id, or else by name, whose case does not count. Null where the
 * library has none.
 */
export function matchGestures(
  own: readonly Gesture[],
  gestures: readonly { id: string; name: string }[],
): Map<string, string | null> {
  const byName = new Map(own.map(({ id, name }) => [folded(name), id]))
  const ids = new Set(own.map(({ id }) => id))
  return new Map(
    gestures.map(({ id, name }) => [id, ids.has(id) ? id : (byName.get(folded(name)) ?? null)]),
  )
}

function folded(name: string): string {
  return name.trim().toLowerCase()
}
