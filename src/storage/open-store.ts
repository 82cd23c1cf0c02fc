import { changeLibrary, planChange } from './change'
import { Connection, type ConnectionOptions } from './connection'
import { loadFacts, noteContents } from './contents'
import { freshLog } from './fresh-log'
import { inventory } from './inventory'
import { listItems, putItem, removeItems } from './items'
import { discardJournal, finishJournal, listUnfinished, openJournal } from './journal'
import { JournalLocks } from './journal-locks'
import { addFullLibrary, listLibraries, loadFull, markLibrary, putLibrary } from './libraries'
import { readMarks } from './marks'
import { purgeDeleted } from './purge'
import { quotaFacts, requestPersistence } from './quota'
import {
  addRecordings,
  listRecordings,
  loadSamples,
  markRecordings,
  updateRecording,
} from './recordings'
import type { Store } from './store'
import { Unreadable } from './unreadable'

/**
 * Opens the database of this origin, bringing it to the present version first.
 * @throws StorageError 'storage/newer' (written by a newer app), 'storage/upgrade-failed' (left as
 *   it was) or 'storage/failed'. Reads of the store throw StorageError too; writes return it.
 */
export async function openStore(
  name = 'movewright',
  options: ConnectionOptions = {},
): Promise<Store> {
  await freshLog(name)
  const connection = new Connection(name, options)
  await connection.get()
  const unreadable = new Unreadable()
  const locks = new JournalLocks(name)
  const now = () => new Date().toISOString()
  return {
    listLibraries: () => listLibraries(connection, unreadable),
    listDeletedLibraries: () => listLibraries(connection, unreadable, true),
    putLibrary: (library) => putLibrary(connection, library),
    deleteLibrary: (id) => markLibrary(connection, id, now()),
    restoreLibrary: (id) => markLibrary(connection, id, null),
    listRecordings: (libraryId) => listRecordings(connection, unreadable, libraryId),
    loadSamples: (recordingId) => loadSamples(connection, unreadable, recordingId),
    loadFacts: (libraryId) => loadFacts(connection, unreadable, libraryId),
    loadFull: (libraryId) => loadFull(connection, unreadable, libraryId),
    updateRecording: (recording) => updateRecording(connection, recording),
    noteContents: (ids) => noteContents(connection, ids),
    deleteRecordings: (ids) => markRecordings(connection, ids, now()),
    restoreRecordings: (ids) => markRecordings(connection, ids, null),
    addFullLibrary: (full) => addFullLibrary(connection, full),
    changeLibrary: (change) => changeLibrary(connection, change, now()),
    planChange: (id, plan) => planChange(connection, unreadable, id, plan, now()),
    addRecordings: (items) => addRecordings(connection, items),
    inventory: () => inventory(connection),
    purgeDeleted: (before) => purgeDeleted(connection, before),
    marks: () => readMarks(connection),
    openJournal: (recording) => openJournal(connection, locks, recording),
    unfinished: () => listUnfinished(connection, unreadable, locks),
    finishUnfinished: (id, recording) => finishJournal(connection, id, recording),
    discardUnfinished: (id) => discardJournal(connection, id),
    listItems: (kind, libraryId) => listItems(connection, kind, libraryId),
    putItem: (kind, item) => putItem(connection, kind, item),
    removeItems: (kind, ids) => removeItems(connection, kind, ids),
    facts: async () => ({ ...(await quotaFacts()), unreadableItems: unreadable.count }),
    requestPersistence,
    takePen: () => connection.takePen(),
    close: () => connection.close(),
  }
}
