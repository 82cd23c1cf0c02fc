import { effect, type ReadonlySignal, signal } from '@preact/signals'
import type { Shelf } from '../shelf'

/** The ids in a stored value of unknown origin; none where it is something else. */
function takeIdsIn(value: unknown): string[] {
  const ids = (value as { takeIds?: unknown } | null | undefined)?.takeIds
  return Array.isArray(ids) ? ids.filter((id) => typeof id === 'string') : []
}

/** Takes far from the others of their gesture that somebody looked at and kept, for each library. */
export function createKeptFar(shelf: Shelf): {
  keptFar: ReadonlySignal<ReadonlySet<string>>
  keepFar(takeId: string): Promise<void>
} {
  const keptFar = signal<ReadonlySet<string>>(new Set())
  const itemId = (libraryId: string) => `${libraryId} kept-far`
  const read = async (libraryId: string) => {
    const items = await shelf.store.listItems('results', libraryId)
    const found = items.find(({ id }) => id === itemId(libraryId))
    if (shelf.current.peek()?.id !== libraryId) return
    keptFar.value = new Set(takeIdsIn(found?.value))
  }
  effect(() => {
    const id = shelf.current.value?.id
    if (id !== undefined) void read(id)
  })
  return {
    keptFar,
    async keepFar(takeId) {
      const libraryId = shelf.current.peek()?.id
      if (libraryId === undefined) return
      const takeIds = [...keptFar.peek(), takeId]
      keptFar.value = new Set(takeIds)
      const value = { takeIds }
      const keptAt = new Date().toISOString()
      shelf.check(
        await shelf.store.putItem('results', { id: itemId(libraryId), libraryId, keptAt, value }),
      )
    },
  }
}
