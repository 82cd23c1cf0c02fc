import { fail, ok, type Result } from '../model/result'
import type { OnProgress } from '../protocol/recogniser'
import { BACKUP_FILE } from '../words/en/backup-file'
import type { BackupContents, BackupLibrary, ByteSource, LibraryPlace } from './contents'
import { findParts, readChecked } from './find-parts'
import { type BackupItem, itemsFromBytes } from './kept-items'
import { type Salvaged, salvageLibrary } from './salvage-library'

/** A library as it comes out of a backup: everything in it that is whole. */
export interface ReadLibrary extends Salvaged {
  items: BackupItem[]
}

/**
 * Looks through a backup or a library file, whole or damaged, one library at a time: what can be
 * restored and what is lost. Samples are checked and let go.
 * @returns failures 'backup/newer', 'backup/too-large', 'library/newer', 'salvage/nothing'
 */
export async function readContents(
  source: ByteSource,
  onProgress?: OnProgress,
): Promise<Result<BackupContents>> {
  const found = await findParts(source)
  if (!found.ok) return found
  const { isBackup, manifest, places } = found.value
  const libraries: BackupLibrary[] = []
  const total = places.length
  for (const [done, place] of places.entries()) {
    onProgress?.({ done, total, what: BACKUP_FILE.looking(done + 1, total) })
    const read = await readLibraryAt(source, place)
    if (read.ok) libraries.push(described(place, read.value))
    else if (read.code !== 'salvage/nothing') return read
  }
  // Libraries may share a name.
  const isBack = (id: string, number: number) =>
    libraries.some(({ place, library }) =>
      place.number === null ? library.id === id : place.number === number,
    )
  const gone = (manifest?.libraries ?? []).filter(({ id }, index) => !isBack(id, index + 1))
  if (libraries.length === 0 && gone.length === 0 && manifest === null) {
    return fail('salvage/nothing', BACKUP_FILE.nothingWhole)
  }
  return ok({
    isBackup,
    madeAt: manifest?.madeAt ?? null,
    libraries,
    gone: gone.map(({ name, takes }) => ({ name, takes })),
  })
}

/** One library with its samples. @returns failures as `salvageLibrary` */
export async function readLibraryAt(
  source: ByteSource,
  place: LibraryPlace,
  onProgress?: OnProgress,
): Promise<Result<ReadLibrary>> {
  const list = await readChecked(source, place.list)
  const salvaged = salvageLibrary(await source.read(place.library), list, onProgress)
  if (!salvaged.ok) return salvaged
  const items = await readChecked(source, place.items)
  return ok({ ...salvaged.value, items: (items && itemsFromBytes(items)) ?? [] })
}

function described(place: LibraryPlace, { full, lost, from, items }: ReadLibrary): BackupLibrary {
  const name = from === 'paths' ? (place.name ?? full.library.name) : full.library.name
  return {
    place,
    library: { ...full.library, name },
    recordings: full.recordings.map(({ recording }) => recording),
    lost,
    from,
    itemCount: items.length,
  }
}
