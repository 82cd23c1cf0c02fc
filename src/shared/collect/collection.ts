import type { Recording } from '../model/library'
import {
  historyOf,
  labelsAfter,
  labelsOf,
  mergeHistories,
  withHistory,
  withLabels,
} from './history'
import type { Session } from './session'
import type { Withdrawal } from './withdrawal'

/** A recording whose content id is known. */
export type Identified = Recording & { contentId: string }

/**
 * What a library holds of people's movements, without samples: sets that only grow, and withdrawals
 * that take away. Every session that a recording names is among `sessions`.
 */
export interface Collection {
  sessions: Session[]
  withdrawals: Withdrawal[]
  recordings: Identified[]
}

/**
 * Union by content. The result depends on what is in both and not on order, grouping or repetition;
 * only `id` and `libraryId` of a recording, which mean nothing elsewhere, are those of `one` where
 * it has the recording.
 */
export function mergeCollections(one: Collection, other: Collection): Collection {
  const withdrawals = mergeByKey(one.withdrawals, other.withdrawals, withdrawalKey)
  const sessions = mergeByKey(one.sessions, other.sessions, ({ id }) => id)
  const known = new Map(one.recordings.map((recording) => [recording.contentId, recording]))
  for (const recording of other.recordings) {
    const before = known.get(recording.contentId)
    const after = before === undefined ? recording : mergeRecording(before, recording)
    known.set(recording.contentId, after)
  }
  return withoutWithdrawn({ sessions, withdrawals, recordings: [...known.values()] })
}

/** Leaves out what withdrawals name, sessions included. */
export function withoutWithdrawn(collection: Collection): Collection {
  const { withdrawals } = collection
  const keys = new Set(withdrawals.map(withdrawalKey))
  const sessionIsGone = ({ id, testerKey }: Session) =>
    keys.has(`session ${id}`) || keys.has(`tester ${testerKey}`)
  const gone = new Set(collection.sessions.filter(sessionIsGone).map(({ id }) => id))
  return {
    withdrawals,
    sessions: collection.sessions.filter(({ id }) => !gone.has(id)),
    recordings: collection.recordings.filter(({ contentId, sessionId }) => {
      if (keys.has(`content ${contentId}`)) return false
      return sessionId === undefined || !(gone.has(sessionId) || keys.has(`session ${sessionId}`))
    }),
  }
}

export function withdrawalKey({ kind, key }: Withdrawal): string {
  return `${kind} ${key}`
}

/** Two copies of one recording: facts of the lesser by their text, all changes of both. */
function mergeRecording(mine: Identified, theirs: Identified): Identified {
  const history = mergeHistories(historyOf(mine), historyOf(theirs))
  const facts = factsText(theirs) < factsText(mine) ? theirs : mine
  const { id, libraryId } = mine
  const labels = labelsAfter(history, labelsOf(mine))
  return withHistory(withLabels({ ...facts, id, libraryId }, labels), history)
}

/** What was measured and by what, as text that the same facts always give. */
function factsText(recording: Identified): string {
  const { kind, source, recordedAt, device, sampleCount, durationMs, gaps, sessionId } = recording
  return JSON.stringify([
    kind,
    source,
    recordedAt,
    device,
    sampleCount,
    durationMs,
    gaps,
    sessionId,
  ])
}

function mergeByKey<T>(one: readonly T[], other: readonly T[], key: (item: T) => string): T[] {
  const known = new Map<string, T>()
  for (const item of [...one, ...other]) {
    const before = known.get(key(item))
    if (before === undefined || JSON.stringify(item) < JSON.stringify(before)) {
      known.set(key(item), item)
    }
  }
  return [...known.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, item]) => item)
}
