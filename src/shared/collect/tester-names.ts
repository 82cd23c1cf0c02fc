import type { Session } from './session'

/**
 * The code that a session's tester goes by, by session id. Where phones gave one code to two testers,
 * the earlier keeps it and others go by the code with the start of their key; it depends on the set
 * of sessions alone.
 */
export function testerNames(sessions: readonly Session[]): Map<string, string> {
  const firstKey = new Map<string, string>()
  const byStart = [...sessions].sort(
    (a, b) => compare(a.startedAt, b.startedAt) || compare(a.testerKey, b.testerKey),
  )
  for (const { testerCode, testerKey } of byStart) {
    if (!firstKey.has(testerCode)) firstKey.set(testerCode, testerKey)
  }
  return new Map(
    sessions.map(({ id, testerCode, testerKey }) => [
      id,
      firstKey.get(testerCode) === testerKey
        ? testerCode
        : `${testerCode}-${testerKey.slice(0, 4)}`,
    ]),
  )
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
