import { sessionFileName, writeSessionFile } from '../../shared/collect/session-file'
import { sessionOf } from '../../shared/collect/session-record'
import type { SessionRun } from '../../shared/collect/session-run'
import { testerNames } from '../../shared/collect/tester-names'
import { withdrawTester } from '../../shared/collect/withdraw'
import type { DeviceFacts, Library } from '../../shared/model/library'
import { fail, ok, type Result } from '../../shared/model/result'
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
    return fail('session/empty', 'Nothing was kept in this session, so there is no file of it.')
  }
  const session = sessionOf(run, device, now())
  await shelf.save(withSession(library, run, device))
  await shelf.reloadRecordings()
  const bytes = writeSessionFile({ session, recordings })
  return ok({ fileName: sessionFileName(session, bytes), bytes })
}

/**
 * Takes a session out of this phone and remembers that it was withdrawn: its file, brought here again,
 * adds nothing, and the library carries the withdrawal to wherever it is merged. Undone in the visit.
 */
export async function withdraw(
  shelf: Shelf,
  library: Library,
  run: SessionRun,
  reread: () => Promise<void>,
): Promise<Result<null>> {
  const { store } = shelf
  const own = await recordingsOf(shelf, library.id, run.id)
  const device = own[0]?.device
  if (device !== undefined) {
    const entered = withSession(library, run, device)
    const code = testerNames(entered.sessions ?? []).get(run.id) ?? run.testerCode
    const all = await store.listRecordings(library.id)
    const left = withdrawTester(entered, all, code, now())
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
  shelf.notices.say(`Session ${run.testerCode} deleted.`, async () => {
    const present = shelf.libraries.peek().find(({ id }) => id === library.id)
    if (present === undefined)
      return shelf.notices.trouble('Its library was deleted; undo that first.')
    const restored = await store.changeLibrary({
      library: withCollectionOf(library, present),
      add: [],
      update: [],
      remove: [],
      restore: own.map(({ id }) => id),
    })
    if (shelf.check(restored)) shelf.check(await putRun(shelf, run))
    await shelf.reload()
    await reread()
  })
  return forgotten
}

function withSession(library: Library, run: SessionRun, device: DeviceFacts): Library {
  const others = (library.sessions ?? []).filter(({ id }) => id !== run.id)
  return { ...library, sessions: [...others, sessionOf(run, device, now())] }
}

/** The library as it is now, with the sessions and withdrawals that it had. */
function withCollectionOf(before: Library, library: Library): Library {
  const { sessions: _, withdrawals: __, ...rest } = library
  return {
    ...rest,
    ...(before.sessions === undefined ? {} : { sessions: before.sessions }),
    ...(before.withdrawals === undefined ? {} : { withdrawals: before.withdrawals }),
  }
}

function now(): string {
  return new Date().toISOString()
}
