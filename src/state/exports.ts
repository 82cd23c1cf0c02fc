import { fileWord } from '../shared/format/file-names'
import { writeLibraryFile } from '../shared/format/library-file'
import { fail, ok, type Result } from '../shared/model/result'
import type { Shelf } from './shelf'

export interface OutFile {
  fileName: string
  bytes: Uint8Array
}

/** The current library with every raw take, as a library file. */
export async function exportLibrary({ store, current }: Shelf): Promise<Result<OutFile>> {
  const library = current.value
  const full = library === null ? null : await store.loadFull(library.id)
  if (full === null) return fail('export/no-library', 'There is no library open to export.')
  const day = new Date().toISOString().slice(0, 10)
  const fileName = `${fileWord(full.library.name, 'library')}-${day}.zip`
  try {
    return ok({ fileName, bytes: writeLibraryFile(full) })
  } catch (error) {
    // Only a library that breaks its own rules, such as one damaged in storage.
    if (error instanceof RangeError) return fail('export/unsound', error.message)
    throw error
  }
}
