import type { RecogniserClient } from '../recogniser/client'
import { fileWord } from '../shared/format/file-names'
import { fail, ok, type Result } from '../shared/model/result'
import type { Shelf } from './shelf'

export interface OutFile {
  fileName: string
  bytes: Uint8Array
}

/** The current library with every raw take, as a library file. */
export async function exportLibrary(
  { store, current }: Shelf,
  recogniser: RecogniserClient,
): Promise<Result<OutFile>> {
  const library = current.value
  const full = library === null ? null : await store.loadFull(library.id)
  if (full === null) return fail('export/no-library', 'There is no library open to export.')
  const written = await recogniser.writeLibrary(full)
  if (!written.ok) return written
  const day = new Date().toISOString().slice(0, 10)
  const fileName = `${fileWord(full.library.name, 'library')}-${day}.zip`
  return ok({ fileName, bytes: written.value })
}
