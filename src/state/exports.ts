import type { RecogniserClient } from '../recogniser/client'
import { fileWord } from '../shared/format/file-names'
import { fail, ok, type Result } from '../shared/model/result'
import { OPEN_LIBRARY } from '../shared/words/en/open-library'
import type { HandedFile, Steering } from './app'
import type { SavedElsewhere } from './saved-elsewhere'
import type { Shelf } from './shelf'

export interface OutFile {
  fileName: string
  bytes: Uint8Array
}

/** The current library with every raw take, as a library file. */
export async function exportLibrary(
  { store, current }: Shelf,
  recogniser: RecogniserClient,
  saved: SavedElsewhere,
  steering: Steering,
): Promise<Result<HandedFile>> {
  const library = current.value
  const full = library === null ? null : await store.loadFull(library.id)
  if (full === null) return fail('export/no-library', OPEN_LIBRARY.noneToExport)
  const written = await recogniser.writeLibrary(full, steering)
  if (!written.ok) return written
  const day = new Date().toISOString().slice(0, 10)
  const fileName = `${fileWord(full.library.name, 'library')}-${day}.zip`
  const ids = full.recordings.map(({ recording }) => recording.id)
  const handedOver = () => saved.mark(full.library.id, ids)
  return ok({ fileName, bytes: written.value, handedOver })
}
