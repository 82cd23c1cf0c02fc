import { sha256Hex } from '../format/sha256'
import { utf8 } from '../format/utf8'
import type { Recording } from '../model/library'
import type { Collection } from './collection'
import type { Session } from './session'
import type { Withdrawal } from './withdrawal'

/**
 * What a phone keeps of withdrawals whose library was removed for good: digests with why, so that an
 * old file does not bring back what its tester took back. Nobody can be found by them.
 */
export type Marks = ReadonlyMap<string, Withdrawal['why']>

type Named = Pick<Withdrawal, 'kind' | 'key'>

/** SHA-256, hex, of library and withdrawal: the same thing, coming in again, has the same. */
export function markOf(libraryId: string, { kind, key }: Named): string {
  return sha256Hex(utf8(`movewright withdrawal 1\n${libraryId}\n${kind} ${key}`))
}

/** What a file holds of people, as far as withdrawals can name it. */
export interface Held {
  sessions: readonly Session[]
  recordings: readonly Pick<Recording, 'contentId' | 'sessionId' | 'testerCode'>[]
}

/**
 * Withdrawals that marks remember, of what comes in with a file.
 * @param libraryId the library it comes from, or goes to
 * @param at when they are remembered, RFC 3339 in UTC
 */
export function recall(marks: Marks, libraryId: string, held: Held, at: string): Withdrawal[] {
  if (marks.size === 0) return []
  const named = new Map(namedBy(held).map((one) => [nameOf(one), one]))
  return [...named.values()].flatMap(({ kind, key, testerCode }): Withdrawal[] => {
    const why = marks.get(markOf(libraryId, { kind, key }))
    return why === undefined ? [] : [{ kind, key, why, testerCode, at }]
  })
}

/** What is here, with the withdrawals that marks remember of what comes in; what is here stays. */
export function withRecalled(
  mine: Collection,
  theirs: readonly Collection[],
  marks: Marks,
  libraryId: string,
  at: string,
): Collection {
  const held = {
    sessions: theirs.flatMap(({ sessions }) => sessions),
    recordings: theirs.flatMap(({ recordings }) => recordings),
  }
  const known = new Set([...mine.withdrawals, ...namedBy(mine)].map(nameOf))
  const recalled = recall(marks, libraryId, held, at).filter((one) => !known.has(nameOf(one)))
  return { ...mine, withdrawals: [...mine.withdrawals, ...recalled] }
}

function nameOf({ kind, key }: Named): string {
  return `${kind} ${key}`
}

function namedBy({ sessions, recordings }: Held): (Named & { testerCode: string })[] {
  const ofSessions = sessions.flatMap(({ id, testerKey, testerCode }) => [
    { kind: 'session' as const, key: id, testerCode },
    { kind: 'tester' as const, key: testerKey, testerCode },
  ])
  const ofRecordings = recordings.flatMap(({ contentId, sessionId, testerCode }) => [
    ...(sessionId === undefined ? [] : [{ kind: 'session' as const, key: sessionId, testerCode }]),
    ...(contentId === undefined ? [] : [{ kind: 'content' as const, key: contentId, testerCode }]),
  ])
  return [...ofRecordings, ...ofSessions]
}
