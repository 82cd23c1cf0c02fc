import type { Library, Recording } from '../model/library'
import type { BackupContents, BackupLibrary } from './contents'
import { filledUp, withheldBy } from './withheld'

/** What lies on this phone, as far as a restore must know; deleted things can still be undone. */
export interface Inventory {
  libraries: { id: string; isDeleted: boolean }[]
  /** `contentId` where it is known. */
  recordings: StoredRecording[]
}

interface StoredRecording extends Pick<Recording, 'id' | 'libraryId' | 'contentId'> {
  isDeleted: boolean
}

/** What is done with one library of a backup. Nothing that is on this phone is overwritten. */
export type Way =
  /** Under its own ids: it is not here. */
  | { kind: 'as-it-was' }
  /** Under new ids and a free name, next to what is here. */
  | { kind: 'beside' }
  /** It is here: what is missing is added, what was deleted comes back. */
  | { kind: 'add'; missing: string[]; undelete: string[]; gestures: number }
  | { kind: 'nothing' }

export interface PlannedLibrary extends BackupLibrary {
  way: Way
  /** Recordings that stay out, since they were withdrawn or dropped here. */
  withheld: number
}

/** Whether libraries that are here are filled up or put beside as they were. */
export type RestoreWish = 'add' | 'beside'

/**
 * Says for each library what a restore would do.
 * @param here libraries of this phone as they are, by id; deleted ones that can still be undone too
 */
export function planRestore(
  contents: BackupContents,
  inventory: Inventory,
  here: ReadonlyMap<string, Library>,
  wish: RestoreWish,
): PlannedLibrary[] {
  const stored = new Map(inventory.recordings.map((one) => [one.id, one]))
  return contents.libraries
    .filter(({ recordings, library }) => recordings.length > 0 || library.gestures.length > 0)
    .map((one) => {
      const isWithheld = withheldBy(here.get(one.library.id), one.library)
      const recordings = one.recordings.filter((recording) => {
        // A backup may be older than the content id that is known here.
        const contentId = recording.contentId ?? stored.get(recording.id)?.contentId
        return !isWithheld(contentId === undefined ? recording : { ...recording, contentId })
      })
      const withheld = one.recordings.length - recordings.length
      const way = wayFor({ ...one, recordings }, inventory, stored, here, wish)
      return { ...one, recordings, withheld, way }
    })
}

function wayFor(
  one: BackupLibrary,
  inventory: Inventory,
  stored: ReadonlyMap<string, StoredRecording>,
  here: ReadonlyMap<string, Library>,
  wish: RestoreWish,
): Way {
  const ids = one.recordings.map(({ id }) => id)
  // Paths alone give no ids that mean anything.
  if (one.from === 'paths') return { kind: 'beside' }
  const known = inventory.libraries.find(({ id }) => id === one.library.id)
  if (known === undefined)
    return { kind: ids.some((id) => stored.has(id)) ? 'beside' : 'as-it-was' }
  if (wish === 'beside') return { kind: 'beside' }
  const missing = ids.filter((id) => !stored.has(id))
  const undelete = ids.filter((id) => {
    const there = stored.get(id)
    return there?.libraryId === one.library.id && there.isDeleted
  })
  const mine = here.get(one.library.id)
  const gestures =
    mine === undefined ? 0 : filledUp(mine, one.library).gestures.length - mine.gestures.length
  const isWhole = missing.length + undelete.length + gestures === 0 && !known.isDeleted
  return isWhole ? { kind: 'nothing' } : { kind: 'add', missing, undelete, gestures }
}
