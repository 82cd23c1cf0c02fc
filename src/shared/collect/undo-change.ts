import type { Library } from '../model/library'
import { withdrawalKey } from './collection'

/**
 * A library with one change of its sessions, withdrawals and gestures taken back. What was changed
 * since, such as a later withdrawal, stays.
 * @param now as it is
 * @param before as it was
 * @param after as the change left it
 */
export function undoChange(now: Library, before: Library, after: Library): Library {
  const { sessions, withdrawals, ...rest } = now
  const kept = takenBack(
    sessions ?? [],
    before.sessions ?? [],
    after.sessions ?? [],
    ({ id }) => id,
  )
  const remembered = takenBack(
    withdrawals ?? [],
    before.withdrawals ?? [],
    after.withdrawals ?? [],
    withdrawalKey,
  )
  return {
    ...rest,
    gestures: takenBack(now.gestures, before.gestures, after.gestures, ({ id }) => id),
    ...(kept.length > 0 || before.sessions !== undefined ? { sessions: kept } : {}),
    ...(remembered.length > 0 || before.withdrawals !== undefined
      ? { withdrawals: remembered }
      : {}),
  }
}

/** Without what the change added, and with what it took away. */
function takenBack<T>(now: T[], before: T[], after: T[], key: (item: T) => string): T[] {
  const keysBefore = new Set(before.map(key))
  const keysAfter = new Set(after.map(key))
  const keysNow = new Set(now.map(key))
  const lost = before.filter((item) => !keysAfter.has(key(item)) && !keysNow.has(key(item)))
  return [...now.filter((item) => keysBefore.has(key(item)) || !keysAfter.has(key(item))), ...lost]
}
