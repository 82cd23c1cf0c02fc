import type { Result } from '../shared/model/result'
import type { Connection } from './connection'
import type { ItemKind } from './schema'
import type { KeptItem } from './store'
import { read, write } from './transaction'

/** Items of one kind beside a library, oldest first. */
export async function listItems(
  connection: Connection,
  kind: ItemKind,
  libraryId: string,
): Promise<KeptItem[]> {
  const items = await read(connection, [kind], (tx) =>
    tx.objectStore(kind).index('library').getAll(libraryId),
  )
  return items.sort((a, b) => a.keptAt.localeCompare(b.keptAt) || a.id.localeCompare(b.id))
}

export function putItem(
  connection: Connection,
  kind: ItemKind,
  item: KeptItem,
): Promise<Result<null>> {
  return write(connection, [kind], async (tx) => {
    await tx.objectStore(kind).put(item)
    return null
  })
}

export function removeItems(
  connection: Connection,
  kind: ItemKind,
  ids: readonly string[],
): Promise<Result<null>> {
  return write(connection, [kind], async (tx) => {
    await Promise.all(ids.map((id) => tx.objectStore(kind).delete(id)))
    return null
  })
}
