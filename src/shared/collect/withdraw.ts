import type { Library, Recording } from '../model/library'
import { withdrawalKey } from './collection'
import { testerNames } from './tester-names'
import type { Withdrawal } from './withdrawal'

/** A library after a withdrawal, and the ids of the recordings that go with it. */
export interface Leave {
  library: Library
  removeIds: string[]
}

/**
 * Takes a tester out for good: recordings, sessions, and whatever any later file may bring of them.
 * @param testerCode as shown in this library
 */
export function withdrawTester(
  library: Library,
  recordings: readonly Recording[],
  testerCode: string,
  at: string,
): Leave {
  const sessions = library.sessions ?? []
  const names = testerNames(sessions)
  const own = sessions.filter(({ id }) => names.get(id) === testerCode)
  const ownIds = new Set(own.map(({ id }) => id))
  const leaving = recordings.filter((one) =>
    ownIds.has(one.sessionId ?? '') ? true : one.testerCode === testerCode,
  )
  const made = { why: 'withdrawn', testerCode, at } as const
  const keys = [...new Set(own.map(({ testerKey }) => testerKey))]
  const loose = leaving.flatMap(({ sessionId, contentId }) =>
    ownIds.has(sessionId ?? '') || contentId === undefined ? [] : [contentId],
  )
  const added: Withdrawal[] = [
    ...keys.map((key): Withdrawal => ({ kind: 'tester', key, ...made })),
    ...own.map(({ id }): Withdrawal => ({ kind: 'session', key: id, ...made })),
    ...loose.map((key): Withdrawal => ({ kind: 'content', key, ...made })),
  ]
  return {
    library: {
      ...withWithdrawals(library, added),
      sessions: sessions.filter(({ id }) => !ownIds.has(id)),
    },
    removeIds: leaving.map(({ id }) => id),
  }
}

/** Leaves takes out that are not good enough, so that their session's file does not bring them back. */
export function dropTakes(
  library: Library,
  recordings: readonly Recording[],
  ids: readonly string[],
  at: string,
): Leave {
  const leaving = recordings.filter(({ id }) => ids.includes(id))
  const dropped = leaving.flatMap(({ contentId, testerCode }): Withdrawal[] =>
    contentId === undefined
      ? []
      : [{ kind: 'content', key: contentId, why: 'dropped', testerCode, at }],
  )
  return { library: withWithdrawals(library, dropped), removeIds: leaving.map(({ id }) => id) }
}

/** The library with these too; what it has already stays as it is. */
export function withWithdrawals(library: Library, added: readonly Withdrawal[]): Library {
  const known = library.withdrawals ?? []
  const keys = new Set(known.map(withdrawalKey))
  const fresh = added.filter((one) => !keys.has(withdrawalKey(one)))
  return fresh.length === 0 ? library : { ...library, withdrawals: [...known, ...fresh] }
}
