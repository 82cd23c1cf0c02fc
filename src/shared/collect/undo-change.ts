import type { Library, Recording } from '../model/library'
import { withdrawalKey } from './collection'
import { headsOf, historyOf, labelsOf, mergeHistories, withHistory, withLabels } from './history'
import type { LabelChange } from './labels'

/**
 * A library with one change of its sessions, withdrawals and gestures taken back. What was changed
 * since, such as a later withdrawal, stays.
 * @param now as it is
 * @param before as it was
 * @param after as the change left it
 * @param used ids of gestures with takes that stay: those are kept also where the change added them
 */
export function undoChange(
  now: Library,
  before: Library,
  after: Library,
  used: ReadonlySet<string> = new Set(),
): Library {
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
    gestures: takenBack(now.gestures, before.gestures, after.gestures, ({ id }) => id, used),
    ...(kept.length > 0 || before.sessions !== undefined ? { sessions: kept } : {}),
    ...(remembered.length > 0 || before.withdrawals !== undefined
      ? { withdrawals: remembered }
      : {}),
  }
}

/**
 * A recording with one change of its labels taken back. Labels that were edited since stay as they
 * are, and their edits replace what was there before the change.
 */
export function undoRecording<R extends Recording>(now: Recording, before: R, after: R): R {
  const ids = (recording: Recording) => new Set(historyOf(recording).map(({ id }) => id))
  const [idsBefore, idsAfter] = [ids(before), ids(after)]
  const history = historyOf(before)
  const since = historyOf(now)
    .filter(({ id }) => !idsAfter.has(id))
    .map((edit): LabelChange => {
      const kept = edit.over.filter((id) => idsBefore.has(id) || !idsAfter.has(id))
      if (kept.length === edit.over.length) return edit
      const heads = headsOf(history, edit.field).map(({ id }) => id)
      return { ...edit, over: [...new Set([...kept, ...heads])] }
    })
  const labels = labelsOf(before)
  for (const { field } of since) Object.assign(labels, { [field]: labelsOf(now)[field] })
  return withHistory(withLabels(before, labels), mergeHistories(history, since))
}

/** Without what the change added, but for what is used, and with what it took away. */
function takenBack<T>(
  now: T[],
  before: T[],
  after: T[],
  key: (item: T) => string,
  used: ReadonlySet<string> = new Set(),
): T[] {
  const keysBefore = new Set(before.map(key))
  const keysAfter = new Set(after.map(key))
  const keysNow = new Set(now.map(key))
  const lost = before.filter((item) => !keysAfter.has(key(item)) && !keysNow.has(key(item)))
  const stays = (id: string) => keysBefore.has(id) || !keysAfter.has(id) || used.has(id)
  return [...now.filter((item) => stays(key(item))), ...lost]
}
