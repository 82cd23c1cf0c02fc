import type { Library } from '../../shared/model/library'
import type { Store } from '../../storage/store'

/**
 * What a restore must not overwrite, by id: deleted libraries too, since they come back with what
 * was withdrawn and added before they were deleted.
 */
export async function librariesHere(store: Store): Promise<Map<string, Library>> {
  const both = await Promise.all([store.listLibraries(), store.listDeletedLibraries()])
  return new Map(both.flat().map((library) => [library.id, library]))
}
