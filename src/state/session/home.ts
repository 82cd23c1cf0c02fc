import { sessionFileName, writeSessionFile } from '../../shared/collect/session-file'
import { sessionOf } from '../../shared/collect/session-record'
import type { SessionRun } from '../../shared/collect/session-run'
import { testerNames } from '../../shared/collect/tester-names'
import { undoChange } from '../../shared/collect/undo-change'
import type { Leave } from '../../shared/collect/withdraw'
import type { Withdrawal } from '../../shared/collect/withdrawal'
import type { DeviceFacts, Library, Recording } from '../../shared/model/library'
import { fail, ok, type Result } from '../../shared/model/result'
import { OPEN_LIBRARY } from '../../shared/words/en/open-library'
import { SESSION_TROUBLE } from '../../shared/words/en/session-trouble'
import type { OutFile } from '../exports'
import type { Shelf } from '../shelf'
import { putRun, recordingsOf } from './kept-run'

/**
 * Enters a session in its library and packs it as a file. Where the library is the designer's own, it is
 * home already.
 */
export async function finish(
  shelf: Shelf,
  library: Library,
  run: SessionRun,
): Promise<Result<OutFile>> {
  const full = await shelf.store.loadFull(library.id)
  const recordings =
    full?.recordings.filter(({ recording }) => recording.sessionId === run.id) ?? []
  const device = recordings[0]?.recording.device
  if (device === undefined) {
    return fail('session/empty', SESSION_TROUBLE.nothingKept)
  }
  const session = sessionOf(run, device, now())
  await shelf.save(withSession(library, run, device))
  await shelf.reloadRecordings()
  const bytes = writeSessionFile({ session, recordings })
  return ok({ fileName: sessionFileName(session, bytes), bytes })
}

/**
 * Takes a session out of this phone and remembers that it was withdrawn: its file, brought here again,
 * adds nothing, and the library carries the withdrawal to wherever it is merged. Other sessions of
 * the same tester stay. Undone in the visit.
 */
export async function withdraw(
  shelf: Shelf,
  library: Library,
  run: SessionRun,
  reread: () => Promise<void>,
): Promise<Result<null>> {
  const { store } = shelf
  const own = await recordingsOf(shelf, library.id, run.id)
  const left = withoutSession(library, run, own)
  if (own.length > 0) {
    const change = { add: [], update: [], restore: [] }
    const changed = await store.changeLibrary({
      library: left.library,
      remove: left.removeIds,
      ...change,
    })
    if (!changed.ok) return changed
  }
  const forgotten = await store.removeItems('sessions', [run.id])
  await shelf.reload()
  shelf.notices.say(SESSION_TROUBLE.deleted(run.testerCode), async () => {
    const isBack = await putBack(shelf, library, left, run)
    await reread()
    return isBack
  })
  return forgotten
}

/** Undoes this one change; what was withdrawn since stays withdrawn. @returns whether it was done */
async function putBack(
  shelf: Shelf,
  before: Library,
  { library: after, removeIds }: Leave,
  run: SessionRun,
): Promise<boolean> {
  const present = shelf.libraries.peek().find(({ id }) => id === before.id)
  if (present === undefined) {
    shelf.notices.trouble(OPEN_LIBRARY.undoThatFirst)
    return false
  }
  if (!isWithdrawn(before, run) && isWithdrawn(present, run)) {
    shelf.notices.trouble(SESSION_TROUBLE.withdrew(run.testerCode))
    return false
  }
  const restored = await shelf.store.changeLibrary({
    library: undoChange(present, before, after),
    add: [],
    update: [],
    remove: [],
    restore: removeIds,
  })
  const isBack = shelf.check(restored) && shelf.check(await putRun(shelf, run))
  await shelf.reload()
  return isBack
}

/** A session that has no recordings leaves nothing to remember. */
function withoutSession(library: Library, run: SessionRun, own: readonly Recording[]): Leave {
  const device = own[0]?.device
  if (device === undefined) return { library, removeIds: [] }
  const { sessions = [] } = withSession(library, run, device)
  const withdrawal: Withdrawal = {
    kind: 'session',
    key: run.id,
    why: 'withdrawn',
    testerCode: testerNames(sessions).get(run.id) ?? run.testerCode,
    at: now(),
  }
  return {
    library: {
      ...library,
      sessions: sessions.filter(({ id }) => id !== run.id),
      withdrawals: [...(library.withdrawals ?? []), withdrawal],
    },
    removeIds: own.map(({ id }) => id),
  }
}

/** Whether the tester took everything back. */
function isWithdrawn({ withdrawals }: Library, { testerKey }: SessionRun): boolean {
  return (withdrawals ?? []).some(({ kind, key }) => kind === 'tester' && key === testerKey)
}

/**
 * Whether this session was withdrawn, alone or with all of its tester. Its run may have outlived it, as
 * when a kill fell between the two: gone on with, it would collect takes that no library lets in.
 */
export function hasLeft(library: Library, run: SessionRun): boolean {
  const isOwn = ({ kind, key }: Withdrawal) => kind === 'session' && key === run.id
  return isWithdrawn(library, run) || (library.withdrawals ?? []).some(isOwn)
}

function withSession(library: Library, run: SessionRun, device: DeviceFacts): Library {
  const others = (library.sessions ?? []).filter(({ id }) => id !== run.id)
  return { ...library, sessions: [...others, sessionOf(run, device, now())] }
}

function now(): string {
  return new Date().toISOString()
}
